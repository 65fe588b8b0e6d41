package dev.stayfixed.telling.pages;

import dev.stayfixed.platform.Page;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.delivery.Delivery;
import dev.stayfixed.telling.entry.EndpointEntry;
import dev.stayfixed.telling.entry.SecretRotation;
import dev.stayfixed.telling.webhooks.Endpoint;
import dev.stayfixed.telling.webhooks.Webhooks;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** One endpoint: how it is, what was sent to it and what it answered. */
@Hidden
@TechnicianPage
@RequestMapping("/settings/webhooks/{id}")
class WebhookPage {

    private static final int PAGE_SIZE = 25;

    private final Webhooks webhooks;
    private final FormReader reader;

    WebhookPage(Webhooks webhooks, FormReader reader) {
        this.webhooks = webhooks;
        this.reader = reader;
    }

    @GetMapping
    String show(
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String state,
            @RequestParam(required = false) @Nullable String after,
            Model model) {
        return page(webhooks.get(id), stored(webhooks.get(id)), state, after, model);
    }

    private static Form stored(Endpoint endpoint) {
        return Form.empty()
                .put("version", String.valueOf(endpoint.version()))
                .put("url", endpoint.details().url())
                .put("description", endpoint.details().description().orElse(""))
                .putAll("kinds", KindChoice.names(endpoint.details().kinds()));
    }

    /** Changes it. */
    @PostMapping
    String change(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<Endpoint.Details> details = WebhooksPage.details(form, reader, show);
        Endpoint now = webhooks.get(id);
        return form.answer(
                response,
                () -> {
                    webhooks.change(id, form.version(), details.orElseThrow(), now.active());
                    return said(id, "settings-saved");
                },
                refused -> told(form, refused, now),
                () -> page(now, form, "", null, model));
    }

    private void told(Form form, Refused refused, Endpoint now) {
        if (refused.type() == ProblemType.VERSION_CHANGED) {
            reader.changedMeanwhile(form, now.version());
        } else {
            reader.refuse(form, EndpointEntry.class, refused);
        }
    }

    @PostMapping("/stop")
    String stop(@PathVariable UUID id, @RequestParam MultiValueMap<String, String> typed) {
        webhooks.change(id, new Form(typed).version(), webhooks.get(id).details(), false);
        return said(id, "webhook-stopped");
    }

    @PostMapping("/start")
    String start(@PathVariable UUID id, @RequestParam MultiValueMap<String, String> typed) {
        webhooks.change(id, new Form(typed).version(), webhooks.get(id).details(), true);
        return said(id, "webhook-started");
    }

    @PostMapping("/delete")
    String delete(@PathVariable UUID id, @RequestParam MultiValueMap<String, String> typed) {
        webhooks.delete(id, new Form(typed).version());
        return "redirect:/settings/webhooks?said=webhook-deleted";
    }

    @PostMapping("/test")
    String test(@PathVariable UUID id) {
        return toDelivery(id, webhooks.test(id), "webhook-test");
    }

    @PostMapping("/rotate")
    String rotate(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<SecretRotation> rotation = reader.read(form, SecretRotation.class, show);
        if (rotation.isEmpty()) {
            form.notTaken(response);
            Endpoint endpoint = webhooks.get(id);
            stored(endpoint).all().forEach(form.all()::putIfAbsent);
            return page(endpoint, form, "", null, model);
        }
        model.addAttribute("made", webhooks.rotate(id, rotation.get().overlap()));
        return "webhook-secret";
    }

    @GetMapping("/deliveries/{deliveryId}")
    String delivery(@PathVariable UUID id, @PathVariable UUID deliveryId, Model model) {
        model.addAttribute("endpoint", webhooks.get(id));
        model.addAttribute("delivery", webhooks.delivery(id, deliveryId));
        model.addAttribute("attempts", webhooks.attempts(deliveryId));
        return "webhook-delivery";
    }

    @PostMapping("/deliveries/{deliveryId}/resend")
    String resend(@PathVariable UUID id, @PathVariable UUID deliveryId) {
        return toDelivery(id, webhooks.resend(id, deliveryId), "webhook-resent");
    }

    private static String toDelivery(UUID id, Delivery delivery, String said) {
        return "redirect:/settings/webhooks/" + id + "/deliveries/" + delivery.id() + "?said=" + said;
    }

    private static String said(UUID id, String word) {
        return "redirect:/settings/webhooks/" + id + "?said=" + word;
    }

    private String page(Endpoint endpoint, Form form, String state, @Nullable String after, Model model) {
        Optional<Delivery.State> only = Stream.of(Delivery.State.values())
                .filter(s -> s.name().equals(state))
                .findFirst();
        model.addAttribute("endpoint", endpoint);
        model.addAttribute("form", form.putIfMissing("overlapHours", "24"));
        model.addAttribute("choice", KindChoice.of(EventKind.forWebhooks()));
        model.addAttribute("state", only.map(Enum::name).orElse(""));
        model.addAttribute("states", Delivery.State.values());
        model.addAttribute("log", webhooks.log(endpoint.id(), only, Page.Request.of(PAGE_SIZE, after)));
        return "settings-webhook";
    }
}
