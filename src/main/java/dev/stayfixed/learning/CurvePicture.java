package dev.stayfixed.learning;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.verification.survival.KaplanMeier;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;

/** The curve as a picture: SVG with a title and a description for those who do not see it. */
public final class CurvePicture {

    private static final int LEFT = 60;
    private static final int TOP = 30;
    private static final int WIDTH = 560;
    private static final int HEIGHT = 260;

    private final Lessons.Holding holding;
    private final Function<Part, String> words;
    private final double longest;
    private final List<KaplanMeier.Step> steps;

    private CurvePicture(Lessons.Holding holding, Function<Part, String> words) {
        this.words = words;
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

    /**
     * The picture of a curve.
     *
     * @param words puts what it says into the words of its reader
     */
    public static String of(Lessons.Holding holding, Function<Part, String> words) {
        return new CurvePicture(holding, words).draw();
    }

    private String draw() {
        KaplanMeier curve = holding.curve();
        Reason watched = Reason.of(LearningWord.WATCHED, Part.count(curve.count()), Part.count(curve.failures()));
        Reason counted = holding.isFew() ? Reason.of(Shape.EACH, watched, LearningWord.TOO_FEW_TO_CONCLUDE) : watched;
        return """
                <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 660 350" role="img" aria-labelledby="t d" \
                font-family="sans-serif" font-size="13">
                <title id="t">%1$s</title>
                <desc id="d">%2$s</desc>
                <rect width="660" height="350" fill="#ffffff"/>
                <text x="60" y="20">%2$s</text>
                %3$s<path d="%4$s" fill="#c9d6e8" stroke="none"/>
                <path d="%5$s" fill="none" stroke="#1b3a5c" stroke-width="2"/>
                <text x="60" y="340">%6$s</text>
                </svg>
                """.formatted(
                        text(Reason.of(LearningWord.HOLDING_BY, holding.by())),
                        text(counted),
                        axes(),
                        band(),
                        line(),
                        text(Reason.of(LearningWord.SINCE_REPAIR, holding.by())));
    }

    private String text(Part said) {
        return words.apply(said).replace("&", "&amp;").replace("<", "&lt;");
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
