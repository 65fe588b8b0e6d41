package dev.stayfixed.intake.pages;

import static dev.stayfixed.intake.pages.PixelColumns.short1;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.springframework.web.util.HtmlUtils;

/**
 * Draws a stretch of a drive: a panel for each signal, in which the enabling conditions lie as bands behind the curve, and a strip for
 * each condition. All share one axis of time, which is as wide as the page: what depends on time is drawn in columns and stretched,
 * words stand beside it and keep their size. So one drawing serves a phone, a desk and print; signal-plot.js adds zoom and read-out
 * from its data- attributes.
 */
final class SignalPlot {

    /** Across, over which a signal is thinned out. */
    static final int COLUMNS = 860;

    private static final int PANEL = 120;
    private static final int BAR = 16;
    private static final int STRIP = 28;
    private static final int BRIDGE = 12;
    private static final int MOST_TICKS = 6;

    private final Recording recording;
    private final Recording.Span shown;

    SignalPlot(Recording recording, Recording.Span shown) {
        this.recording = recording;
        this.shown = shown;
    }

    /**
     * A signal.
     *
     * @param scale the numbers on its axis, as SVG
     * @param curve its course over the bands, as SVG
     */
    record Panel(String name, String unit, String scale, String curve) {}

    /**
     * A condition.
     *
     * @param marked whether the strip carries the amount; otherwise it has to be said beside it
     * @param svg where it held; empty where it held at no time, or was decided at the start
     */
    record Strip(Recording.Condition condition, String answer, boolean marked, String svg) {}

    /** What the panels show, for those who do not see them. */
    String described() {
        List<Reason> said = new ArrayList<>();
        said.add(Reason.of(DriveWord.SHOWN_SPAN, Part.verbatim(clock(shown.from())), Part.verbatim(clock(shown.to()))));
        for (Recording.Signal signal : recording.signals()) {
            PixelColumns columns = columns(signal, shown);
            said.add(Reason.of(
                    DriveWord.SHOWN_SIGNAL,
                    Part.verbatim(signal.name()),
                    Part.verbatim(short1(columns.lowest())),
                    Part.verbatim(short1(columns.highest())),
                    Part.verbatim(signal.unit())));
        }
        return words(Shape.EACH.of(said));
    }

    /** In the language of this service; names and units come with the recording. */
    private static String words(Part said) {
        return ShopSettings.Units.METRIC.words(said);
    }

    List<Panel> panels() {
        return recording.signals().stream().map(this::panel).toList();
    }

    private static PixelColumns columns(Recording.Signal signal, Recording.Span span) {
        return PixelColumns.of(signal, span.from(), span.to(), COLUMNS);
    }

    private Panel panel(Recording.Signal signal) {
        PixelColumns columns = columns(signal, shown);
        Ticks ticks = ticks(signal);
        StringBuilder scale = new StringBuilder("<svg class='plot-scale' width='100%%' height='%d'>".formatted(PANEL));
        StringBuilder curve = timed("plot-panel", PANEL);
        bands(signal, ticks, curve);
        for (double tick = ticks.first(); tick <= ticks.last() + ticks.step() / 2; tick += ticks.step()) {
            String y = short1(ticks.y(tick, PANEL));
            curve.append("<path class='plot-grid' d='M-99999 %sH99999'/>".formatted(y));
            scale.append("<text class='plot-soft' x='100%%' y='%s' dx='-6' dy='4' text-anchor='end'>%s</text>"
                    .formatted(y, ticks.label(tick)));
        }
        limits(signal, ticks, curve);
        curve.append("<path class='plot-line' data-name='%s' data-unit='%s' data-values='%s' d='%s'/></svg></svg>"
                .formatted(
                        escape(signal.name()),
                        escape(signal.unit()),
                        columns.readOut(bridge(signal)),
                        columns.path(value -> ticks.y(value, PANEL), bridge(signal))));
        return new Panel(signal.name(), signal.unit(), scale.append("</svg>").toString(), curve.toString());
    }

    /** An SVG as wide as its place, in which one unit to the right is one column of time. */
    private static StringBuilder timed(String name, int height) {
        return new StringBuilder(("<svg class='%s' width='100%%' height='%d'>"
                        + "<svg class='plot-time' width='100%%' height='%d' viewBox='0 0 %d %d' preserveAspectRatio='none'>")
                .formatted(name, height, height, COLUMNS, height));
    }

    /** Of the whole drive, so that a stretch can be compared with another; a limit that was never reached is in sight. */
    private Ticks ticks(Recording.Signal signal) {
        PixelColumns all = columns(signal, recording.part(Double.NaN, Double.NaN));
        double lowest = all.lowest();
        double highest = all.highest();
        for (Recording.Condition condition : recording.conditions()) {
            if (isMissed(condition) && isOf(condition, signal)) {
                Recording.Limits limits = condition.limits().orElseThrow();
                highest = Double.isFinite(limits.low()) ? Math.max(highest, limits.low()) : highest;
                lowest = Double.isFinite(limits.high()) ? Math.min(lowest, limits.high()) : lowest;
            }
        }
        return Ticks.of(lowest, highest);
    }

    private static boolean isMissed(Recording.Condition condition) {
        return condition.answer() == Recording.Answer.MISSED;
    }

    private static boolean isOf(Recording.Condition condition, Recording.Signal signal) {
        return condition
                .limits()
                .filter(limits -> limits.signal().equals(signal.name()))
                .isPresent();
    }

    /** A condition lies behind the curve of its own signal, between its limits; one of no signal that is drawn lies behind all. */
    private void bands(Recording.Signal signal, Ticks ticks, StringBuilder svg) {
        recording.conditions().stream()
                .filter(condition -> condition.limits().isEmpty())
                .forEach(condition -> bars(condition, " plot-behind", 0, PANEL, svg));
        for (Recording.Condition condition : recording.conditions()) {
            if (isOf(condition, signal)) {
                Recording.Limits limits = condition.limits().orElseThrow();
                double top = ticks.inside(limits.high(), PANEL);
                bars(condition, "", top, Math.max(1, ticks.inside(limits.low(), PANEL) - top), svg);
            }
        }
    }

    /** Those of a condition that was missed, so that one sees from how far. */
    private void limits(Recording.Signal signal, Ticks ticks, StringBuilder svg) {
        for (Recording.Condition condition : recording.conditions()) {
            if (isMissed(condition) && isOf(condition, signal)) {
                Recording.Limits limits = condition.limits().orElseThrow();
                for (double limit : new double[] {limits.low(), limits.high()}) {
                    if (limit >= ticks.first() && limit <= ticks.last()) {
                        svg.append("<path class='plot-limit' d='M-99999 %sH99999'/>"
                                .formatted(short1(ticks.y(limit, PANEL))));
                    }
                }
            }
        }
    }

    private void bars(Recording.Condition condition, String style, double y, double height, StringBuilder svg) {
        for (Recording.Stretch stretch : condition.stretches()) {
            if (stretch.span().touches(shown)) {
                double x = column(Math.max(shown.from(), stretch.span().from()));
                double end = column(Math.min(shown.to(), stretch.span().to()));
                svg.append("<rect class='%s%s' x='%s' y='%s' width='%s' height='%s'/>"
                        .formatted(
                                style(stretch, condition.answer()),
                                style,
                                short1(x),
                                short1(y),
                                short1(Math.max(1, end - x)),
                                short1(height)));
            }
        }
    }

    private static String style(Recording.Stretch stretch, Recording.Answer answer) {
        if (stretch.counts()) {
            return "plot-held";
        }
        return answer == Recording.Answer.MISSED ? "plot-missed" : "plot-open";
    }

    /** Wide enough for samples that are far apart on the screen because the stretch is short. */
    private int bridge(Recording.Signal signal) {
        return Math.max(BRIDGE, (int) Math.ceil(2.5 * signal.typicalStep() / shown.length() * COLUMNS));
    }

    List<Strip> strips() {
        return recording.conditions().stream().map(this::strip).toList();
    }

    private Strip strip(Recording.Condition condition) {
        if (condition.stretches().isEmpty()) {
            return new Strip(condition, words(condition.answer().word()), false, "");
        }
        StringBuilder svg = timed("plot-strip", STRIP);
        svg.append("<path class='plot-grid' d='M-99999 %dH99999'/>".formatted(STRIP - 1));
        bars(condition, "", BAR, STRIP - BAR - 1, svg);
        svg.append("</svg>");
        Optional<Recording.Span> marked = longest(condition);
        marked.ifPresent(span -> svg.append(mark(span, condition.amount())));
        return new Strip(
                condition,
                words(condition.answer().word()),
                marked.isPresent(),
                svg.append("</svg>").toString());
    }

    /** The stretch that the answer is about: the longest, or of what counts the longest; where it is in sight. */
    private Optional<Recording.Span> longest(Recording.Condition condition) {
        return condition.stretches().stream()
                .max(Comparator.comparing(Recording.Stretch::counts)
                        .thenComparing(stretch -> stretch.span().length()))
                .map(Recording.Stretch::span)
                .filter(span -> span.touches(shown));
    }

    /** Words over a bar: they begin with it, or end with it where there is more room. */
    private String mark(Recording.Span span, String amount) {
        double from = Math.max(0, column(span.from()) / COLUMNS * 100);
        double to = Math.min(100, column(span.to()) / COLUMNS * 100);
        boolean isLate = from > 50;
        return "<text class='plot-text' x='%s%%' y='%d' text-anchor='%s'>%s</text>"
                .formatted(short1(isLate ? to : from), BAR - 4, isLate ? "end" : "start", escape(amount));
    }

    /** The moments, as SVG. */
    String axis() {
        StringBuilder svg = new StringBuilder("<svg class='plot-axis' width='100%' height='24'>");
        double step = timeStep(shown.length());
        for (double at = Math.ceil(shown.from() / step) * step; at <= shown.to(); at += step) {
            double x = column(at) / COLUMNS * 100;
            String anchor = x < 4 ? "start" : x > 96 ? "end" : "middle";
            svg.append("<line class='plot-tick' x1='%1$s%%' x2='%1$s%%' y1='0' y2='6'/>".formatted(short1(x)));
            svg.append("<text class='plot-soft' x='%s%%' y='19' text-anchor='%s'>%s</text>"
                    .formatted(short1(x), anchor, clock(at)));
        }
        return svg.append("</svg>").toString();
    }

    private static double timeStep(double span) {
        for (double step : new double[] {1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200}) {
            if (span / step <= MOST_TICKS) {
                return step;
            }
        }
        return 14_400 * Math.ceil(span / 14_400 / MOST_TICKS);
    }

    private double column(double time) {
        return (time - shown.from()) / shown.length() * COLUMNS;
    }

    private static String clock(double seconds) {
        long whole = Math.round(seconds);
        return whole >= 3600
                ? String.format(Locale.ROOT, "%d:%02d:%02d", whole / 3600, whole / 60 % 60, whole % 60)
                : String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
    }

    private static String escape(String text) {
        return HtmlUtils.htmlEscape(text, "UTF-8");
    }

    /** Round numbers on the value axis, with room above the highest value. */
    record Ticks(double first, double last, double step) {

        static Ticks of(double lowest, double highest) {
            double span = Math.max(1e-6, highest - lowest);
            double rough = span / 4;
            double power = Math.pow(10, Math.floor(Math.log10(rough)));
            double step = rough / power <= 1
                    ? power
                    : rough / power <= 2 ? 2 * power : rough / power <= 5 ? 5 * power : 10 * power;
            return new Ticks(Math.floor(lowest / step) * step, (Math.floor(highest / step) + 1) * step, step);
        }

        double y(double value, int height) {
            return height - (value - first) / (last - first) * height;
        }

        /** The nearest height that is drawn, also of a value beyond the axis. */
        double inside(double value, int height) {
            return y(Math.min(last, Math.max(first, value)), height);
        }

        String label(double value) {
            int places = step >= 1 ? 0 : (int) Math.ceil(-Math.log10(step));
            return String.format(Locale.ROOT, "%." + Math.min(6, places) + "f", value + 0.0);
        }
    }
}
