package dev.stayfixed.intake.pages;

import static dev.stayfixed.intake.pages.PixelColumns.short1;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.springframework.web.util.HtmlUtils;

/**
 * Signals of a drive over a common time axis, with bands where each enabling condition held and marks where it was missed. One SVG
 * string serves page, print and PDF; signal-plot.js adds zoom and read-out from its data- attributes.
 */
final class SignalPlot {

    static final int COLUMNS = 860;
    private static final int LEFT = 76;
    private static final int WIDTH = LEFT + COLUMNS + 24;
    private static final int PANEL = 130;
    private static final int PANEL_GAP = 34;
    private static final int BAND = 34;
    private static final int BRIDGE = 12;

    private final Recording recording;
    private final double from;
    private final double to;
    private final StringBuilder svg = new StringBuilder();

    private SignalPlot(Recording recording, double from, double to) {
        this.recording = recording;
        this.from = from;
        this.to = to;
    }

    /** The whole drive. */
    static String svg(Recording recording) {
        return svg(recording, recording.part(Double.NaN, Double.NaN));
    }

    /** A part of the drive, see {@link Recording#part}. */
    static String svg(Recording recording, Recording.Span part) {
        return new SignalPlot(recording, part.from(), part.to()).draw();
    }

    private String draw() {
        int bandsTop = 28 + recording.signals().size() * (PANEL + PANEL_GAP);
        int axis = bandsTop + recording.conditions().size() * BAND;
        int height = axis + 44;
        svg.append(
                ("<svg class='plot' xmlns='http://www.w3.org/2000/svg' role='img' width='%d' height='%d' viewBox='0 0 %d %d'"
                                + " data-left='%d' data-columns='%d' data-from='%s' data-to='%s' aria-label='%s'>")
                        .formatted(
                                WIDTH,
                                height,
                                WIDTH,
                                height,
                                LEFT,
                                COLUMNS,
                                short1(from),
                                short1(to),
                                escape(words(described()))));
        for (int i = 0; i < recording.signals().size(); i++) {
            panel(recording.signals().get(i), 28 + i * (PANEL + PANEL_GAP));
        }
        for (int i = 0; i < recording.conditions().size(); i++) {
            band(recording.conditions().get(i), bandsTop + i * BAND);
        }
        timeAxis(axis);
        return svg.append("</svg>").toString();
    }

    private Reason described() {
        List<Reason> shown = new ArrayList<>();
        shown.add(Reason.of(DriveWord.SHOWN_SPAN, Part.verbatim(clock(from)), Part.verbatim(clock(to))));
        for (Recording.Signal signal : recording.signals()) {
            PixelColumns columns = PixelColumns.of(signal, from, to, COLUMNS);
            shown.add(Reason.of(
                    DriveWord.SHOWN_SIGNAL,
                    Part.verbatim(signal.name()),
                    Part.verbatim(short1(columns.lowest())),
                    Part.verbatim(short1(columns.highest())),
                    Part.verbatim(signal.unit())));
        }
        for (Recording.Condition condition : recording.conditions()) {
            shown.add(Reason.of(
                    DriveWord.SHOWN_CONDITION,
                    Part.verbatim(condition.words()),
                    Part.count(condition.held().size()),
                    Part.count(condition.missed().size())));
        }
        return Shape.EACH.of(shown);
    }

    /** In the language of this service; names and units come with the recording. */
    private static String words(Part said) {
        return ShopSettings.Units.METRIC.words(said);
    }

    private void panel(Recording.Signal signal, int top) {
        PixelColumns columns = PixelColumns.of(signal, from, to, COLUMNS);
        Ticks ticks = Ticks.of(columns.lowest(), columns.highest());
        text(LEFT, top - 8, "start", "plot-text", signal.name() + ", " + signal.unit());
        for (double tick = ticks.first(); tick <= ticks.last() + ticks.step() / 2; tick += ticks.step()) {
            double y = ticks.y(tick, top, PANEL);
            svg.append("<path d='M%d %sh%d' class='plot-grid' stroke='#cfc9bc'/>".formatted(LEFT, short1(y), COLUMNS));
            text(LEFT - 8, y + 4, "end", "plot-soft", ticks.label(tick));
        }
        svg.append(
                "<path class='plot-line' fill='none' stroke='#0b5c63' data-name='%s' data-unit='%s' data-values='%s' d='%s'/>"
                        .formatted(
                                escape(signal.name()),
                                escape(signal.unit()),
                                columns.readOut(),
                                columns.path(LEFT, value -> ticks.y(value, top, PANEL), bridge(signal))));
    }

    /** Wide enough for samples that are far apart on the screen because the part is short. */
    private int bridge(Recording.Signal signal) {
        return Math.max(BRIDGE, (int) Math.ceil(2.5 * signal.typicalStep() / (to - from) * COLUMNS));
    }

    private void band(Recording.Condition condition, int top) {
        text(LEFT, top + 10, "start", "plot-text", condition.words());
        svg.append("<path d='M%d %dh%d' class='plot-grid' stroke='#cfc9bc'/>".formatted(LEFT, top + 22, COLUMNS));
        String held = words(DriveWord.HELD);
        for (Recording.Span span : condition.held()) {
            if (span.to() >= from && span.from() <= to) {
                double x = x(Math.max(from, span.from()));
                double width = Math.max(1, x(Math.min(to, span.to())) - x);
                svg.append(
                        "<rect x='%s' y='%d' width='%s' height='12' class='plot-held' fill='#e3f2e7' stroke='#1d6b3a'><title>%s</title></rect>"
                                .formatted(short1(x), top + 16, short1(width), escape(held)));
                if (width > 34) {
                    text(x + width / 2, top + 26, "middle", "plot-text", held);
                }
            }
        }
        if (condition.held().isEmpty() && condition.missed().isEmpty()) {
            text(LEFT + 4, top + 26, "start", "plot-soft", words(DriveWord.NOT_IN_LOG));
        }
        for (Recording.Miss miss : condition.missed()) {
            if (miss.at() >= from && miss.at() <= to) {
                svg.append(("<path d='M%s %dl10 10m0 -10l-10 10' class='plot-missed' stroke='#a3211c' stroke-width='2'>"
                                + "<title>%s</title></path>")
                        .formatted(
                                short1(x(miss.at()) - 5),
                                top + 17,
                                escape(words(Reason.of(
                                        DriveWord.MISSED_AT,
                                        Part.verbatim(clock(miss.at())),
                                        Part.verbatim(miss.words()))))));
                text(x(miss.at()) + 9, top + 26, "start", "plot-text", words(DriveWord.MISSED));
            }
        }
    }

    private void timeAxis(int y) {
        svg.append("<path d='M%d %dh%d' class='plot-axis' stroke='#6b7685'/>".formatted(LEFT, y, COLUMNS));
        double step = timeStep(to - from);
        for (double at = Math.ceil(from / step) * step; at <= to; at += step) {
            svg.append("<path d='M%s %dv6' class='plot-axis' stroke='#6b7685'/>".formatted(short1(x(at)), y));
            text(x(at), y + 20, "middle", "plot-soft", clock(at));
        }
        text(
                LEFT + COLUMNS / 2.0,
                y + 38,
                "middle",
                "plot-text",
                words(to >= 3600 ? DriveWord.HOURS_AXIS : DriveWord.SECONDS_AXIS));
    }

    private static double timeStep(double span) {
        for (double step : new double[] {1, 2, 5, 10, 30, 60, 120, 300, 600, 1800, 3600, 7200}) {
            if (span / step <= 9) {
                return step;
            }
        }
        return 14_400 * Math.ceil(span / 14_400 / 9);
    }

    private double x(double time) {
        return LEFT + (time - from) / (to - from) * COLUMNS;
    }

    private static String clock(double seconds) {
        long whole = Math.round(seconds);
        return whole >= 3600
                ? String.format(Locale.ROOT, "%d:%02d:%02d", whole / 3600, whole / 60 % 60, whole % 60)
                : String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
    }

    private void text(double x, double y, String anchor, String style, String words) {
        svg.append("<text x='%s' y='%s' text-anchor='%s' class='%s' font-size='12'>%s</text>"
                .formatted(short1(x), short1(y), anchor, style, escape(words)));
    }

    private static String escape(String text) {
        return HtmlUtils.htmlEscape(text, "UTF-8");
    }

    /** Round numbers on the value axis. */
    record Ticks(double first, double last, double step) {

        static Ticks of(double lowest, double highest) {
            double span = Math.max(1e-6, highest - lowest);
            double rough = span / 4;
            double power = Math.pow(10, Math.floor(Math.log10(rough)));
            double step = rough / power <= 1
                    ? power
                    : rough / power <= 2 ? 2 * power : rough / power <= 5 ? 5 * power : 10 * power;
            return new Ticks(
                    Math.floor(lowest / step) * step,
                    Math.max(Math.ceil(highest / step), Math.floor(lowest / step) + 1) * step,
                    step);
        }

        double y(double value, int top, int height) {
            return top + height - (value - first) / (last - first) * height;
        }

        String label(double value) {
            int places = step >= 1 ? 0 : (int) Math.ceil(-Math.log10(step));
            return String.format(Locale.ROOT, "%." + Math.min(6, places) + "f", value + 0.0);
        }
    }
}
