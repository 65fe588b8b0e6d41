package dev.stayfixed.people.pages;

import dev.stayfixed.people.access.Asker;
import dev.stayfixed.people.access.FirstOwner;
import dev.stayfixed.people.access.SignIn;
import dev.stayfixed.people.entry.OwnerEntry;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Optional;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Where the first owner says who they are; once there is one, the page is gone. */
@Hidden
@TechnicianPage
@RequestMapping("/first-owner")
class FirstOwnerPage {

    private final FirstOwner firstOwner;
    private final SignIn signIn;
    private final FormReader reader;

    FirstOwnerPage(FirstOwner firstOwner, SignIn signIn, FormReader reader) {
        this.firstOwner = firstOwner;
        this.signIn = signIn;
        this.reader = reader;
    }

    @GetMapping
    String show(Model model) {
        return firstOwner.isWanted() ? page(Form.empty(), model) : "redirect:/sign-in";
    }

    @PostMapping
    String enter(
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response) {
        Form form = new Form(typed);
        signIn.slow("/first-owner", request);
        Optional<OwnerEntry> owner = reader.read(form, OwnerEntry.class, show);
        return form.answer(
                response,
                () -> {
                    OwnerEntry entry = owner.orElseThrow();
                    firstOwner.enter(entry, Asker.now().isPresent());
                    signIn.enter(entry.mail(), request, response);
                    return "redirect:/settings/people?said=first-owner";
                },
                refused -> reader.refuse(form, OwnerEntry.class, refused),
                () -> page(form, model));
    }

    private static String page(Form form, Model model) {
        form.all().remove("password");
        model.addAttribute("form", form);
        model.addAttribute("withCode", Asker.now().isEmpty());
        return "people/first-owner";
    }
}
