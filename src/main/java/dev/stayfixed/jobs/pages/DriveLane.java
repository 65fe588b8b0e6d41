package dev.stayfixed.jobs.pages;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.web.pages.Show;
import java.util.ArrayList;
import java.util.List;
import org.springframework.web.util.HtmlUtils;

/** The drives of a fault on the axis of its job, as SVG for page and print. A cut in the axis shows as two strokes. */
final class DriveLane {

    private static final int LONGEST_STEP = 200;
    private static final int LINE = 34;
    private static final int HEIGHT = 116;

    private DriveLane() {}

    static String svg(String code, List<LaneAxis.Event> events, LaneAxis axis, Show show) {
        List<LaneAxis.Stop> stops = axis.stops(events);
        int width = axis.width();
        StringBuilder svg = new StringBuilder();
        svg.append(
                "<svg class='lane' xmlns='http://www.w3.org/2000/svg' role='img' width='%d' height='%d' viewBox='0 0 %d %d'"
                        .formatted(width, HEIGHT, width, HEIGHT));
        svg.append(" aria-label='")
                .append(HtmlUtils.htmlEscape(show.words(described(code, stops, show)), "UTF-8"))
                .append("'>");
        svg.append(
                "<path d='M8 %d H%d' class='lane-line' stroke='#6b7685' stroke-width='2'/>".formatted(LINE, width - 8));
        stops.forEach(stop -> draw(svg, stop, show));
        return svg.append("</svg>").toString();
    }

    static List<LaneAxis.Event> events(List<FaultView.Attempt> attempts) {
        List<LaneAxis.Event> events = new ArrayList<>();
        for (FaultView.Attempt attempt : attempts) {
            attempt.repair()
                    .ifPresent(r -> events.add(
                            new LaneAxis.Event(LaneMark.REPAIR, r.details().performedAt())));
            attempt.steps().forEach(step -> events.add(new LaneAxis.Event(step.mark(), step.at())));
        }
        return events;
    }

    private static void draw(StringBuilder svg, LaneAxis.Stop stop, Show show) {
        int x = stop.place().x();
        if (stop.place().cut()) {
            int at = x - LONGEST_STEP / 2;
            svg.append("<path d='M%d %d l6 -16 M%d %d l6 -16' class='m-bar' stroke='#1c2430'/>"
                    .formatted(at - 6, LINE + 8, at + 2, LINE + 8));
        }
        svg.append("<g transform='translate(%d %d)'>%s</g>"
                .formatted(x, LINE, stop.mark().shape()));
        text(svg, x, 74, "lane-word", show.words(said(stop)));
        text(svg, x, 92, "lane-date", show.day(stop.first()));
        text(svg, x, 108, "lane-date", stop.count() == 1 ? show.clock(stop.first()) : "– " + show.day(stop.last()));
    }

    private static Part said(LaneAxis.Stop stop) {
        return stop.count() == 1 ? stop.mark() : Reason.of(LaneReason.SO_MANY, stop.mark(), Part.count(stop.count()));
    }

    private static void text(StringBuilder svg, int x, int y, String style, String text) {
        svg.append("<text x='%d' y='%d' text-anchor='middle' class='%s' font-size='13'>%s</text>"
                .formatted(x, y, style, HtmlUtils.htmlEscape(text, "UTF-8")));
    }

    private static Reason described(String code, List<LaneAxis.Stop> stops, Show show) {
        Part of = Part.verbatim(code);
        return stops.isEmpty()
                ? Reason.of(LaneReason.NOTHING_YET, of)
                : Reason.of(
                        LaneReason.IN_ORDER,
                        of,
                        Shape.EACH.of(stops.stream().map(stop -> at(stop, show)).toList()));
    }

    private static Reason at(LaneAxis.Stop stop, Show show) {
        return stop.count() == 1
                ? Reason.of(LaneReason.EVENT_ON, stop.mark(), Part.verbatim(show.time(stop.first())))
                : Reason.of(
                        LaneReason.EVENTS_BETWEEN,
                        said(stop),
                        Part.verbatim(show.day(stop.first())),
                        Part.verbatim(show.day(stop.last())));
    }
}
