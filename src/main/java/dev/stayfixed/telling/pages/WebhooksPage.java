package dev.stayfixed.telling.pages;

import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.entry.EndpointEntry;
import dev.stayfixed.telling.webhooks.Endpoint;
import dev.stayfixed.telling.webhooks.Webhooks;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Optional;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** The programs that are told by webhook, and adding one. */
@Hidden
@TechnicianPage
@RequestMapping("/settings/webhooks")
class WebhooksPage {

    private final Webhooks webhooks;
    private final FormReader reader;

    WebhooksPage(Webhooks webhooks, FormReader reader) {
        this.webhooks = webhooks;
        this.reader = reader;
    }

    @GetMapping
    String show(Model model) {
        return page(Form.empty().putAll("kinds", KindChoice.names(EventKind.forWebhooks())), model);
    }

    /** Answers with the secret itself: it is shown this once, so there is no address to go back to it. */
    @PostMapping
    String add(
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<Endpoint.Details> details = details(form, reader, show);
        return form.answer(
                response,
                () -> {
                    model.addAttribute("made", webhooks.add(details.orElseThrow()));
                    return "webhook-secret";
                },
                refused -> reader.refuse(form, EndpointEntry.class, refused),
                () -> page(form, model));
    }

    /** The interface takes no list for all kinds; on a page somebody may just have taken out every tick. */
    static Optional<Endpoint.Details> details(Form form, FormReader reader, Show show) {
        Optional<EndpointEntry> entry = reader.read(form, EndpointEntry.class, show);
        if (form.isBlank("kinds")) {
            reader.wrong(form, "kinds", "telling.entry.endpoint.kinds.none");
        }
        return entry.flatMap(said -> reader.made(form, EndpointEntry.class, said::details));
    }

    private String page(Form form, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("endpoints", webhooks.all());
        model.addAttribute("most", Webhooks.MOST);
        model.addAttribute("choice", KindChoice.of(EventKind.forWebhooks()));
        return "settings-webhooks";
    }
}
