package dev.stayfixed.learning.pages;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.learning.CurvePicture;
import dev.stayfixed.learning.Learning;
import dev.stayfixed.learning.Learning.By;
import dev.stayfixed.learning.LearningWord;
import dev.stayfixed.learning.Lessons;
import dev.stayfixed.learning.Lessons.Measure;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.survival.KaplanMeier;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import java.util.List;
import java.util.stream.IntStream;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.RequestParam;

/** What the shop's repairs teach: how often the first repair held, what comes back, and how long repairs hold. */
@Hidden
@TechnicianPage
class LearningPage {

    private final Learning learning;

    LearningPage(Learning learning) {
        this.learning = learning;
    }

    /**
     * Repairs with something in common.
     *
     * @param doubt says that they are too few; empty where they are not
     */
    record Row(String name, int repairs, String cameBack, String range, String doubt) {

        static Row of(Lessons.Group group, Show show) {
            Lessons.Share share = group.comebacks();
            return new Row(
                    group.name(),
                    group.repairs(),
                    show.words(
                            share.whole() == 0
                                    ? LearningWord.NONE_PROVEN_YET
                                    : Reason.of(
                                            LearningWord.OF_PROVEN,
                                            Part.count(share.part()),
                                            Part.count(share.whole()))),
                    share.whole() == 0 ? "" : interval(share, show),
                    share.isFew() ? show.words(LearningWord.TOO_FEW_TO_COMPARE) : "");
        }
    }

    /** A list, cut where it gets long; the CSV holds all of it. */
    record Table(List<Row> rows, String left) {

        static Table of(Lessons.Leading leading, Show show) {
            return new Table(
                    leading.groups().stream().map(group -> Row.of(group, show)).toList(),
                    leading.left() == 0
                            ? ""
                            : leading.left() > Lessons.COUNTED
                                    ? Lessons.COUNTED + "+"
                                    : String.valueOf(leading.left()));
        }
    }

    /**
     * Steps of the curve, likewise: where there are many, one of so many.
     *
     * @param each 1 for all of them
     */
    record Steps(List<KaplanMeier.Step> rows, int each) {

        static Steps of(List<KaplanMeier.Step> steps) {
            int each = (steps.size() + Lessons.LONGEST_LIST - 1) / Lessons.LONGEST_LIST;
            return new Steps(
                    IntStream.range(0, steps.size())
                            .filter(i -> (i + 1) % each == 0)
                            .mapToObj(steps::get)
                            .toList(),
                    each);
        }
    }

    @GetMapping("/learning")
    String show(@RequestParam(defaultValue = "") String by, @ModelAttribute("show") Show show, Model model) {
        Measure distance = show.settings().units() == ShopSettings.Units.US ? Measure.MILES : Measure.DISTANCE;
        Measure measure = by.equals("distance") ? distance : Measure.DAYS;
        Lessons lessons = learning.lessons();
        Lessons.Holding holding = learning.holding(measure);
        model.addAttribute("lessons", lessons);
        model.addAttribute("firstTime", lessons.firstTime());
        model.addAttribute("firstTimeRange", interval(lessons.firstTime(), show));
        model.addAttribute("byCode", Table.of(learning.leading(By.CODE), show));
        model.addAttribute("byRepair", Table.of(learning.leading(By.REPAIR), show));
        model.addAttribute("measure", measure);
        model.addAttribute("holding", holding);
        model.addAttribute("curve", holding.curve());
        model.addAttribute("steps", Steps.of(holding.curve().steps()));
        model.addAttribute("picture", CurvePicture.of(holding, show::words));
        model.addAttribute("few", Lessons.FEW);
        return "learning";
    }

    private static String interval(Lessons.Share share, Show show) {
        return show.words(Reason.of(
                LearningWord.PERCENT_RANGE,
                Part.count(Math.round(share.lower() * 100)),
                Part.count(Math.round(share.upper() * 100))));
    }
}
