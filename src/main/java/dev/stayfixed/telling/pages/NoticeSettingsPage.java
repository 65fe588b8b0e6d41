package dev.stayfixed.telling.pages;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.FollowUps;
import dev.stayfixed.telling.Notices;
import dev.stayfixed.telling.ServiceAddress;
import dev.stayfixed.telling.ShopNotices;
import dev.stayfixed.telling.entry.MailAddressField;
import dev.stayfixed.telling.entry.ShopNoticesEntry;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import dev.stayfixed.wording.Scale;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Optional;
import java.util.function.Function;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Who in the shop and which drivers are told of what, what counts as a comeback, and the calendar of promises. */
@Hidden
@TechnicianPage
@RequestMapping("/settings/notifications")
class NoticeSettingsPage {

    private final Notices notices;
    private final FollowUps followUps;
    private final ServiceAddress service;
    private final FormReader reader;

    NoticeSettingsPage(Notices notices, FollowUps followUps, ServiceAddress service, FormReader reader) {
        this.reader = reader;
        this.notices = notices;
        this.followUps = followUps;
        this.service = service;
    }

    @GetMapping
    String show(@ModelAttribute("show") Show show, Model model) {
        return page(stored(show), show, model);
    }

    private Form stored(Show show) {
        ShopNotices now = notices.ofShop();
        Form form = Form.empty()
                .put("version", String.valueOf(now.version()))
                .put("technicianEmail", now.technicianEmail().orElse(""))
                .putAll("technicianKinds", KindChoice.names(now.technicianKinds()))
                .putAll("driverKinds", KindChoice.names(now.driverKinds()))
                .put("signature", now.signature().orElse(""))
                .put("silentDays", String.valueOf(now.silentDays()))
                .put("comebackDays", String.valueOf(now.comebackDays()));
        now.comebackDistance()
                .ifPresent(km -> form.put(
                        "comebackDistance",
                        show.number(show.scale(DriveQuantity.DISTANCE).shown(km), 1)));
        return form;
    }

    @PostMapping
    String change(
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        reader.made(
                form,
                ShopNoticesEntry.class,
                () -> MailAddressField.optional("technicianEmail", form.value("technicianEmail")));
        Optional<ShopNotices> wanted = reader.read(
                        form, ShopNoticesEntry.class, show, scales(show), "technicianKinds", "driverKinds")
                .flatMap(entry -> reader.made(form, ShopNoticesEntry.class, entry::notices));
        return form.answer(
                response,
                () -> {
                    notices.change(form.version(), wanted.orElseThrow());
                    return "redirect:/settings/notifications?said=settings-saved";
                },
                refused -> {
                    if (refused.type() != ProblemType.VERSION_CHANGED) {
                        throw refused;
                    }
                    reader.changedMeanwhile(form, notices.ofShop().version());
                },
                () -> page(form, show, model));
    }

    private static Function<String, Optional<Scale>> scales(Show show) {
        return path ->
                path.equals("comebackDistance") ? Optional.of(show.scale(DriveQuantity.DISTANCE)) : Optional.empty();
    }

    /** The address is shown this once: only what is needed to know it again is kept. */
    @PostMapping("/calendar")
    String calendar(@ModelAttribute("show") Show show, Model model) {
        model.addAttribute("calendar", service.of("/calendar/" + followUps.newLink() + ".ics"));
        return page(stored(show), show, model);
    }

    @PostMapping("/calendar/end")
    String endCalendar() {
        followUps.noLink();
        return "redirect:/settings/notifications?said=calendar-ended";
    }

    private static String page(Form form, Show show, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("technicianChoice", KindChoice.of(EventKind.forTechnician()));
        model.addAttribute("driverChoice", KindChoice.of(EventKind.forDriver()));
        model.addAttribute("distanceUnit", show.unit(DriveQuantity.DISTANCE));
        return "settings-notifications";
    }
}
