package dev.stayfixed.web.pages;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.learning.CurvePicture;
import dev.stayfixed.learning.Learning;
import dev.stayfixed.learning.Lessons;
import dev.stayfixed.learning.Lessons.Measure;
import io.swagger.v3.oas.annotations.Hidden;
import java.util.Comparator;
import java.util.List;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.RequestParam;

/** What the shop's repairs teach: how often the first repair held, what comes back, and how long repairs hold. */
@Hidden
@Controller
class LearningPage {

    /** Rows of a list on the page; the CSV holds all of them. */
    private static final int LONGEST_LIST = 50;

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

        static Row of(Lessons.Group group) {
            Lessons.Share share = group.comebacks();
            return new Row(
                    group.name(),
                    group.repairs(),
                    share.whole() == 0 ? "none proven yet" : share.part() + " of " + share.whole() + " proven",
                    share.whole() == 0 ? "" : interval(share),
                    share.isFew() ? "too few to compare" : "");
        }
    }

    /** A list, cut where it gets long. */
    record Table(List<Row> rows, int left) {

        static Table of(List<Lessons.Group> groups) {
            return new Table(
                    groups.stream()
                            .sorted(Comparator.comparing(
                                            (Lessons.Group g) -> -g.comebacks().part())
                                    .thenComparing(g -> -g.repairs()))
                            .limit(LONGEST_LIST)
                            .map(Row::of)
                            .toList(),
                    Math.max(0, groups.size() - LONGEST_LIST));
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
        model.addAttribute("firstTimeRange", interval(lessons.firstTime()));
        model.addAttribute("byCode", Table.of(lessons.byCode()));
        model.addAttribute("byRepair", Table.of(lessons.byRepair()));
        model.addAttribute("measure", measure);
        model.addAttribute("holding", holding);
        model.addAttribute("curve", holding.curve());
        model.addAttribute("picture", CurvePicture.of(holding));
        model.addAttribute("few", Lessons.FEW);
        return "learning";
    }

    private static String interval(Lessons.Share share) {
        return "%d to %d %%".formatted(Math.round(share.lower() * 100), Math.round(share.upper() * 100));
    }
}
