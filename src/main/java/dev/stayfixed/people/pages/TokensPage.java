package dev.stayfixed.people.pages;

import dev.stayfixed.people.Scope;
import dev.stayfixed.people.Tokens;
import dev.stayfixed.people.entry.TokenEntry;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** The tokens by which programs come in. */
@Hidden
@TechnicianPage
@RequestMapping("/settings/tokens")
class TokensPage {

    private final Tokens tokens;
    private final CurrentShop shop;
    private final FormReader reader;

    TokensPage(Tokens tokens, CurrentShop shop, FormReader reader) {
        this.tokens = tokens;
        this.shop = shop;
        this.reader = reader;
    }

    @GetMapping
    String show(Model model) {
        return page(Form.empty().put("scope", Scope.DRIVES.name()).put("days", "90"), model);
    }

    /** Its secret is on the page that answers, and on no other. */
    @PostMapping
    String make(
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<TokenEntry> entry = reader.read(form, TokenEntry.class, show);
        if (entry.isEmpty()) {
            form.notTaken(response);
            return page(form, model);
        }
        model.addAttribute("made", entry.get().name());
        model.addAttribute(
                "secret",
                tokens.make(
                        shop.id(),
                        entry.get().name(),
                        entry.get().scope(),
                        Duration.ofDays(entry.get().days())));
        return show(model);
    }

    @PostMapping("/{id}/end")
    String end(@PathVariable UUID id) {
        tokens.end(shop.id(), id);
        return "redirect:/settings/tokens?said=token-ended";
    }

    private String page(Form form, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("tokens", tokens.of(shop.id()));
        model.addAttribute("scopes", Scope.values());
        return "people/tokens";
    }
}
