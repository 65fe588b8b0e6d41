package dev.stayfixed.learning;

import dev.stayfixed.verification.survival.KaplanMeier;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The curve as a picture: SVG with a title and a description for those who do not see it. */
public final class CurvePicture {

    private static final int LEFT = 60;
    private static final int TOP = 30;
    private static final int WIDTH = 560;
    private static final int HEIGHT = 260;

    private final Lessons.Holding holding;
    private final double longest;
    private final List<KaplanMeier.Step> steps;

    private CurvePicture(Lessons.Holding holding) {
        this.holding = holding;
        this.longest = Math.max(1, holding.curve().longest());
        this.steps = distinguishable();
    }

    /** Steps less than two units of the picture apart are drawn as one. */
    private List<KaplanMeier.Step> distinguishable() {
        Map<Long, KaplanMeier.Step> last = new TreeMap<>();
        holding.curve().steps().forEach(step -> last.put(Math.round(x(step.time()) / 2), step));
        return List.copyOf(last.values());
    }

    public static String of(Lessons.Holding holding) {
        return new CurvePicture(holding).draw();
    }

    private String draw() {
        KaplanMeier curve = holding.curve();
        String words = "%d repairs watched, %d of them failed%s"
                .formatted(curve.count(), curve.failures(), holding.isFew() ? "; too few to conclude anything" : "");
        return """
                <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 660 350" role="img" aria-labelledby="t d" \
                font-family="sans-serif" font-size="13">
                <title id="t">Share of repairs that hold, by %1$s</title>
                <desc id="d">%2$s</desc>
                <rect width="660" height="350" fill="#ffffff"/>
                <text x="60" y="20">%2$s</text>
                %3$s<path d="%4$s" fill="#c9d6e8" stroke="none"/>
                <path d="%5$s" fill="none" stroke="#1b3a5c" stroke-width="2"/>
                <text x="60" y="340">%1$s since the repair; the band is 95 %% sure at each point</text>
                </svg>
                """.formatted(holding.by().unit(), words, axes(), band(), line());
    }

    private String axes() {
        StringBuilder axes = new StringBuilder();
        for (int i = 0; i <= 4; i++) {
            String y = number(y(i / 4.0));
            String x = number(x(longest * i / 4));
            axes.append(
                    "<path d=\"M60 %1$sH620\" stroke=\"#cccccc\"/><text x=\"52\" y=\"%1$s\" text-anchor=\"end\">%2$d %%</text>\n"
                            .formatted(y, i * 25));
            axes.append("<text x=\"%s\" y=\"312\" text-anchor=\"middle\">%s</text>\n"
                    .formatted(x, number(longest * i / 4)));
        }
        return axes.toString();
    }

    private String line() {
        StringBuilder path = new StringBuilder("M" + number(x(0)) + " " + number(y(1)));
        for (KaplanMeier.Step step : steps) {
            path.append("H").append(number(x(step.time()))).append("V").append(number(y(step.holding())));
        }
        return path.append("H").append(number(x(longest))).toString();
    }

    /** Along the upper ends forwards, along the lower ends backwards. */
    private String band() {
        StringBuilder path = new StringBuilder("M" + number(x(0)) + " " + number(y(1)));
        for (KaplanMeier.Step step : steps) {
            path.append("H").append(number(x(step.time()))).append("V").append(number(y(step.upper())));
        }
        path.append("H").append(number(x(longest)));
        for (int i = steps.size() - 1; i >= 0; i--) {
            path.append("V").append(number(y(steps.get(i).lower())));
            path.append("H").append(number(x(steps.get(i).time())));
        }
        return path.append("V").append(number(y(1))).append("Z").toString();
    }

    private double x(double time) {
        return LEFT + WIDTH * time / longest;
    }

    private static double y(double share) {
        return TOP + HEIGHT * (1 - share);
    }

    private static String number(double value) {
        long tenths = Math.round(value * 10);
        return tenths % 10 == 0 ? String.valueOf(tenths / 10) : String.valueOf(tenths / 10.0);
    }
}
