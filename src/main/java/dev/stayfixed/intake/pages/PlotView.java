package dev.stayfixed.intake.pages;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.reason.Kind;
import java.util.List;
import java.util.Locale;

/**
 * The picture of a drive on a page, with links that zoom without script.
 *
 * @param path of the page; the picture alone is at the same path and "/plot"
 * @param shown the stretch that is drawn, of a drive of so many seconds
 * @param described what is drawn, for those who do not see it
 * @param panels see {@link SignalPlot}, and
 * @param strips also, and
 * @param axis also
 * @param columns how many the picture has across
 * @param longAxis whether the axis counts hours
 */
record PlotView(
        String path,
        Recording.Span shown,
        double end,
        String described,
        List<SignalPlot.Panel> panels,
        List<SignalPlot.Strip> strips,
        String axis,
        int columns,
        boolean longAxis,
        List<Link> links) {

    /**
     * Another stretch of the drive.
     *
     * @param name of what it does, for the script
     * @param leads whether it shows anything else than is shown
     */
    record Link(String name, String sign, String words, String href, boolean leads) {}

    /**
     * A stretch of a drive.
     *
     * @param path of the page
     * @param from s after the start; NaN for the start, and
     * @param to NaN for the end
     */
    static PlotView of(Recording recording, String path, double from, double to) {
        Recording.Span whole = recording.part(Double.NaN, Double.NaN);
        Recording.Span shown = recording.part(from, to);
        SignalPlot plot = new SignalPlot(recording, shown);
        return new PlotView(
                path,
                shown,
                whole.to(),
                plot.described(),
                plot.panels(),
                plot.strips(),
                plot.axis(),
                SignalPlot.COLUMNS,
                shown.to() >= 3600,
                links(path, shown, whole.to()));
    }

    private static List<Link> links(String path, Recording.Span shown, double end) {
        double span = shown.length();
        double earlier = Math.max(0, shown.from() - span / 2);
        double later = Math.min(end, shown.to() + span / 2);
        boolean isPart = span < end;
        return List.of(
                link("in", "+", DriveWord.ZOOM_IN, path, shown.from() + span / 4, shown.to() - span / 4, true),
                link("out", "−", DriveWord.ZOOM_OUT, path, earlier, later, isPart),
                link("earlier", "←", DriveWord.EARLIER, path, earlier, earlier + span, isPart && shown.from() > 0),
                link("later", "→", DriveWord.LATER, path, later - span, later, isPart && shown.to() < end),
                link("whole", "", DriveWord.WHOLE_DRIVE, path, 0, end, isPart));
    }

    private static Link link(String name, String sign, Kind words, String path, double from, double to, boolean leads) {
        return new Link(
                name,
                sign,
                ShopSettings.Units.METRIC.words(words),
                String.format(Locale.ROOT, "%s?from=%.1f&to=%.1f#plot", path, from, to),
                leads);
    }
}
