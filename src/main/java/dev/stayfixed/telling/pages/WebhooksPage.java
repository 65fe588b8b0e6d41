package dev.stayfixed.telling.pages;

import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.webhooks.Endpoint;
import dev.stayfixed.telling.webhooks.Webhooks;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** The programs that are told by webhook, and adding one. */
@Hidden
@TechnicianPage
@RequestMapping("/settings/webhooks")
class WebhooksPage {

    private final Webhooks webhooks;

    WebhooksPage(Webhooks webhooks) {
        this.webhooks = webhooks;
    }

    @GetMapping
    String show(Model model) {
        return page(Form.empty().putAll("kinds", KindChoice.names(EventKind.forWebhooks())), model);
    }

    /** Answers with the secret itself: it is shown this once, so there is no address to go back to it. */
    @PostMapping
    String add(@RequestParam MultiValueMap<String, String> typed, Model model, HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<Endpoint.Details> details = details(form);
        return form.answer(
                response,
                () -> {
                    model.addAttribute("made", webhooks.add(details.get()));
                    return "webhook-secret";
                },
                refused -> refusedBy(form, refused),
                () -> page(form, model));
    }

    static void refusedBy(Form form, Refused refused) {
        form.refusedAs(refused, Map.of("url", "url"), Map.of("url", "Address", "", "Endpoints"));
    }

    static Optional<Endpoint.Details> details(Form form) {
        String url = form.required("url", "Address", 2000, "give an absolute https address");
        Optional<String> description = form.text("description", "Note", 200);
        Set<EventKind> kinds = KindChoice.chosen(form, "kinds", EventKind.forWebhooks());
        if (kinds.isEmpty()) {
            form.wrong("kinds", "Events: choose at least one; to send nothing, stop the endpoint");
        }
        return form.isWrong() ? Optional.empty() : Optional.of(new Endpoint.Details(url, description, kinds));
    }

    private String page(Form form, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("endpoints", webhooks.all());
        model.addAttribute("most", Webhooks.MOST);
        model.addAttribute("choice", KindChoice.of(EventKind.forWebhooks()));
        return "settings-webhooks";
    }
}
