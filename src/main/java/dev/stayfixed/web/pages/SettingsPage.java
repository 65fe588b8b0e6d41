package dev.stayfixed.web.pages;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.jobs.Shops;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** How the shop wants times and units written, and when a silent job counts as stalled. */
@Hidden
@TechnicianPage
@RequestMapping("/settings")
class SettingsPage {

    private final Shops shops;

    SettingsPage(Shops shops) {
        this.shops = shops;
    }

    @GetMapping
    String show(@ModelAttribute("show") Show show, Model model) {
        ShopSettings settings = show.settings();
        return page(
                Form.empty()
                        .put("name", settings.name())
                        .put("zone", settings.zone().getId())
                        .put("units", settings.units().name())
                        .put("stallDays", String.valueOf(settings.stallDays())),
                model);
    }

    @PostMapping
    String change(@RequestParam MultiValueMap<String, String> typed, Model model, HttpServletResponse response) {
        Form form = new Form(typed);
        String name = form.required("name", "Name of the shop", 200, "give a name; it stands on reports");
        Optional<ZoneId> zone = zone(form);
        ShopSettings.Units units = form.has("units", "US") ? ShopSettings.Units.US : ShopSettings.Units.METRIC;
        Optional<Integer> stallDays = form.whole("stallDays", "Days without a drive", 1, 365);
        if (stallDays.isEmpty()) {
            form.wrong("stallDays", "Days without a drive: give a whole number from 1 to 365");
        }
        if (form.isWrong() || zone.isEmpty() || stallDays.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(form, model);
        }
        shops.change(new ShopSettings(name, zone.get(), units, stallDays.get()));
        return "redirect:/settings?said=settings-saved";
    }

    private static Optional<ZoneId> zone(Form form) {
        String name = form.required("zone", "Time zone", 60, "give one, such as Europe/Berlin or America/Chicago");
        try {
            return name.isEmpty() ? Optional.empty() : Optional.of(ZoneId.of(name));
        } catch (DateTimeException e) {
            form.wrong(
                    "zone", "Time zone: found “" + name + "”, one such as Europe/Berlin or America/Chicago is wanted");
            return Optional.empty();
        }
    }

    private static String page(Form form, Model model) {
        model.addAttribute("form", form);
        model.addAttribute(
                "zones",
                ZoneId.getAvailableZoneIds().stream()
                        .filter(z -> z.matches("(Africa|America|Asia|Atlantic|Australia|Europe|Indian|Pacific)/.+|UTC"))
                        .sorted()
                        .toList());
        return "settings";
    }
}
