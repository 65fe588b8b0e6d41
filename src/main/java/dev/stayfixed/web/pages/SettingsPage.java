package dev.stayfixed.web.pages;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.jobs.entry.ShopEntry;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.time.ZoneId;
import java.util.Optional;
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
    private final FormReader reader;

    SettingsPage(Shops shops, FormReader reader) {
        this.shops = shops;
        this.reader = reader;
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
    String change(
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<ShopSettings> settings = reader.read(form, ShopEntry.class, show)
                .flatMap(entry -> reader.made(form, ShopEntry.class, entry::settings));
        return form.answer(
                response,
                () -> {
                    shops.change(settings.orElseThrow());
                    return "redirect:/settings?said=settings-saved";
                },
                refused -> reader.refuse(form, ShopEntry.class, refused),
                () -> page(form, model));
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
