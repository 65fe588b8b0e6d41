package dev.stayfixed.intake.pages;

import dev.stayfixed.jobs.ShopSettings;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A plot on a page, with links that zoom without script.
 *
 * @param svg see {@link SignalPlot}
 */
record PlotView(String svg, List<Link> links) {

    /** A part of the drive to look at. */
    record Link(String words, String href) {}

    /**
     * A part of a drive.
     *
     * @param path of the page
     * @param from s after the start; NaN for the start, and
     * @param to NaN for the end
     */
    static PlotView of(Recording recording, String path, double from, double to) {
        double end = Math.max(1, recording.end());
        Recording.Span part = recording.part(from, to);
        double first = part.from();
        double last = part.to();
        double span = last - first;
        List<Link> links = new ArrayList<>();
        links.add(link(DriveWord.ZOOM_IN, path, first + span / 4, last - span / 4));
        if (span < end) {
            links.add(link(DriveWord.ZOOM_OUT, path, Math.max(0, first - span / 2), Math.min(end, last + span / 2)));
            links.add(
                    link(DriveWord.EARLIER, path, Math.max(0, first - span / 2), Math.max(0, first - span / 2) + span));
            links.add(
                    link(DriveWord.LATER, path, Math.min(end, last + span / 2) - span, Math.min(end, last + span / 2)));
            links.add(new Link(ShopSettings.Units.METRIC.words(DriveWord.WHOLE_DRIVE), path));
        }
        return new PlotView(SignalPlot.svg(recording, part), links);
    }

    private static Link link(DriveWord words, String path, double from, double to) {
        return new Link(
                ShopSettings.Units.METRIC.words(words),
                String.format(Locale.ROOT, "%s?from=%.1f&to=%.1f", path, from, to));
    }
}
