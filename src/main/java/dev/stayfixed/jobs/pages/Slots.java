package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Standing;
import dev.stayfixed.verification.Trips;
import dev.stayfixed.web.pages.Show;
import java.util.List;
import org.springframework.web.util.HtmlUtils;

/** The trips that a verdict takes, as places: filled by a passed trip, open, or taken by a failed one. Drawn as on the lane. */
public final class Slots {

    private static final int STEP = 30;
    private static final int HEIGHT = 28;

    private Slots() {}

    static List<LaneMark> of(Standing standing, Trips trips) {
        return standing.slots(trips.count()).stream()
                .map(slot -> switch (slot) {
                    case PASSED -> LaneMark.PASSED;
                    case FAILED -> LaneMark.FAILED;
                    case OPEN -> LaneMark.OPEN_SLOT;
                })
                .toList();
    }

    /** SVG that says in words what it shows. */
    public static String svg(Standing standing, Trips trips, Show show) {
        List<LaneMark> slots = of(standing, trips);
        int width = Math.max(1, slots.size()) * STEP;
        StringBuilder svg = new StringBuilder(
                "<svg class='slots' xmlns='http://www.w3.org/2000/svg' role='img' width='%d' height='%d' viewBox='0 0 %d %d' aria-label='%s'>"
                        .formatted(
                                width,
                                HEIGHT,
                                width,
                                HEIGHT,
                                HtmlUtils.htmlEscape(show.words(standing.said()), "UTF-8")));
        for (int i = 0; i < slots.size(); i++) {
            svg.append("<g transform='translate(%d %d)'>%s</g>"
                    .formatted(i * STEP + STEP / 2, HEIGHT / 2, slots.get(i).shape()));
        }
        return svg.append("</svg>").toString();
    }
}
