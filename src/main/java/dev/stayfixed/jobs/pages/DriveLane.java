package dev.stayfixed.jobs.pages;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.web.pages.Show;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.springframework.web.util.HtmlUtils;

/**
 * The drives of a fault on a time axis, as SVG for page, print and PDF. Time runs to the right; marks that would lie on each other
 * are moved apart, and a long pause is cut short and shows as two strokes, so each mark carries its own date.
 */
final class DriveLane {

    private static final int LEAST_STEP = 112;
    private static final int LONGEST_STEP = 200;
    private static final int MARGIN = 62;
    private static final int LINE = 34;
    private static final int HEIGHT = 116;
    private static final double UNITS_PER_HOUR = 3;

    private DriveLane() {}

    private record Placed(int x, LaneMark mark, Instant at, boolean cut) {}

    private record Event(LaneMark mark, Instant at) {}

    static String svg(String code, List<FaultView.Attempt> attempts, Show show) {
        List<Placed> marks = placed(events(attempts));
        int width = marks.isEmpty() ? 320 : marks.get(marks.size() - 1).x() + MARGIN;
        StringBuilder svg = new StringBuilder();
        svg.append(
                "<svg class='lane' xmlns='http://www.w3.org/2000/svg' role='img' width='%d' height='%d' viewBox='0 0 %d %d'"
                        .formatted(width, HEIGHT, width, HEIGHT));
        svg.append(" aria-label='")
                .append(HtmlUtils.htmlEscape(show.words(described(code, marks, show)), "UTF-8"))
                .append("'>");
        svg.append(
                "<path d='M8 %d H%d' class='lane-line' stroke='#6b7685' stroke-width='2'/>".formatted(LINE, width - 8));
        marks.forEach(mark -> draw(svg, mark, show));
        return svg.append("</svg>").toString();
    }

    private static List<Event> events(List<FaultView.Attempt> attempts) {
        List<Event> events = new ArrayList<>();
        for (FaultView.Attempt attempt : attempts) {
            attempt.repair()
                    .ifPresent(r ->
                            events.add(new Event(LaneMark.REPAIR, r.details().performedAt())));
            attempt.steps().forEach(step -> events.add(new Event(step.mark(), step.at())));
        }
        return events;
    }

    private static List<Placed> placed(List<Event> events) {
        List<Placed> placed = new ArrayList<>();
        int x = MARGIN;
        for (int i = 0; i < events.size(); i++) {
            boolean cut = false;
            if (i > 0) {
                double hours =
                        Duration.between(events.get(i - 1).at(), events.get(i).at())
                                        .toMinutes()
                                / 60.0;
                double wanted = hours * UNITS_PER_HOUR;
                cut = wanted > LONGEST_STEP;
                x += (int) Math.round(Math.min(LONGEST_STEP, Math.max(LEAST_STEP, wanted)));
            }
            placed.add(new Placed(x, events.get(i).mark(), events.get(i).at(), cut));
        }
        return placed;
    }

    private static void draw(StringBuilder svg, Placed placed, Show show) {
        if (placed.cut()) {
            int at = placed.x() - LONGEST_STEP / 2;
            svg.append("<path d='M%d %d l6 -16 M%d %d l6 -16' class='m-bar' stroke='#1c2430'/>"
                    .formatted(at - 6, LINE + 8, at + 2, LINE + 8));
        }
        svg.append("<g transform='translate(%d %d)'>%s</g>"
                .formatted(placed.x(), LINE, placed.mark().shape()));
        text(svg, placed.x(), 74, "lane-word", show.words(placed.mark()));
        text(svg, placed.x(), 92, "lane-date", show.day(placed.at()));
        text(svg, placed.x(), 108, "lane-date", show.clock(placed.at()));
    }

    private static void text(StringBuilder svg, int x, int y, String style, String text) {
        svg.append("<text x='%d' y='%d' text-anchor='middle' class='%s' font-size='13'>%s</text>"
                .formatted(x, y, style, HtmlUtils.htmlEscape(text, "UTF-8")));
    }

    private static Reason described(String code, List<Placed> marks, Show show) {
        Part of = Part.verbatim(code);
        return marks.isEmpty()
                ? Reason.of(LaneReason.NOTHING_YET, of)
                : Reason.of(
                        LaneReason.IN_ORDER,
                        of,
                        Shape.EACH.of(marks.stream()
                                .map(m -> Reason.of(LaneReason.EVENT_ON, m.mark(), Part.verbatim(show.time(m.at()))))
                                .toList()));
    }
}
