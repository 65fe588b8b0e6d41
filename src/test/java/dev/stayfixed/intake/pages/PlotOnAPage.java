package dev.stayfixed.intake.pages;

import dev.stayfixed.web.pages.TechnicianPage;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Shows a generated drive on a page, as the page of a drive shows a recorded one. */
@TestConfiguration(proxyBeanMethods = false)
@TechnicianPage
public class PlotOnAPage {

    public static final String PATH = "/generated-drive";

    @GetMapping(PATH)
    String plot(
            @RequestParam(defaultValue = "NaN") double from,
            @RequestParam(defaultValue = "NaN") double to,
            Model model) {
        model.addAttribute("plot", PlotView.of(GeneratedDrive.recording(), PATH, from, to));
        return "generated-drive";
    }

    @GetMapping(PATH + "/plot")
    String stretch(@RequestParam double from, @RequestParam double to, Model model) {
        model.addAttribute("plot", PlotView.of(GeneratedDrive.recording(), PATH, from, to));
        return "plot :: plot(plot=${plot})";
    }
}
