package dev.stayfixed.people.pages;

import dev.stayfixed.people.EntryLinks;
import dev.stayfixed.people.EntryLinks.Purpose;
import dev.stayfixed.people.People;
import dev.stayfixed.people.Person;
import dev.stayfixed.people.access.Sessions;
import dev.stayfixed.people.access.SignIn;
import dev.stayfixed.people.entry.NewPassword;
import dev.stayfixed.platform.LinkToken;
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
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Where somebody who was invited chooses a password. */
@Hidden
@TechnicianPage
@RequestMapping("/invitation/{token}")
class InvitationPage {

    private final EntryLinks links;
    private final People people;
    private final Sessions sessions;
    private final SignIn signIn;
    private final FormReader reader;

    InvitationPage(EntryLinks links, People people, Sessions sessions, SignIn signIn, FormReader reader) {
        this.links = links;
        this.people = people;
        this.sessions = sessions;
        this.signIn = signIn;
        this.reader = reader;
    }

    @GetMapping
    String show(@PathVariable String token, Model model, HttpServletResponse response) {
        return page(token, Form.empty(), model, response);
    }

    @PostMapping
    String accept(
            @PathVariable String token,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<Person> person = person(token);
        Optional<NewPassword> password = reader.read(form, NewPassword.class, show);
        if (person.isEmpty() || password.isEmpty() || !links.use(Purpose.INVITATION, token)) {
            form.notTaken(response);
            return page(token, form, model, response);
        }
        people.choosePassword(person.get().id(), password.get().password());
        sessions.endAll(person.get().mail());
        signIn.enter(person.get().mail(), request, response);
        return "redirect:/";
    }

    private Optional<Person> person(String token) {
        return LinkToken.hasForm(token) ? links.look(Purpose.INVITATION, token) : Optional.empty();
    }

    private String page(String token, Form form, Model model, HttpServletResponse response) {
        Optional<Person> person = person(token);
        if (person.isEmpty()) {
            response.setStatus(HttpServletResponse.SC_GONE);
        }
        form.all().remove("password");
        model.addAttribute("form", form);
        model.addAttribute("token", token);
        model.addAttribute("person", person.orElse(null));
        return "people/invitation";
    }
}
