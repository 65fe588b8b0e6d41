package dev.stayfixed.people.pages;

import dev.stayfixed.customer.LinkAddress;
import dev.stayfixed.people.EntryLinks;
import dev.stayfixed.people.People;
import dev.stayfixed.people.Person;
import dev.stayfixed.people.Role;
import dev.stayfixed.people.SignInMail;
import dev.stayfixed.people.access.Sessions;
import dev.stayfixed.people.entry.InvitationEntry;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
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
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/** The members of the shop: who they are, what they may do, and an invitation for one more. */
@Hidden
@TechnicianPage
@RequestMapping("/settings/people")
class PeoplePage {

    private final People people;
    private final EntryLinks links;
    private final Sessions sessions;
    private final SignInMail mail;
    private final LinkAddress address;
    private final CurrentShop shop;
    private final FormReader reader;

    PeoplePage(
            People people,
            EntryLinks links,
            Sessions sessions,
            SignInMail mail,
            LinkAddress address,
            CurrentShop shop,
            FormReader reader) {
        this.people = people;
        this.links = links;
        this.sessions = sessions;
        this.mail = mail;
        this.address = address;
        this.shop = shop;
        this.reader = reader;
    }

    @GetMapping
    String show(Model model) {
        return page(Form.empty().put("role", Role.TECHNICIAN.name()), model);
    }

    /** Shows the link of the invitation this once; where a mail server is named, it goes by mail too. */
    @PostMapping
    String invite(
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<InvitationEntry> entry = reader.read(form, InvitationEntry.class, show);
        Optional<Person> invited = entry.flatMap(e ->
                reader.made(form, InvitationEntry.class, () -> people.add(shop.id(), e.mail(), e.name(), e.role())));
        if (invited.isEmpty()) {
            form.notTaken(response);
            return page(form, model);
        }
        return invited(invited.get(), model);
    }

    private String invited(Person person, Model model) {
        String link = address.to(
                "/invitation/" + links.invitation(person.id()),
                ServletUriComponentsBuilder.fromCurrentContextPath().build().toUriString());
        model.addAttribute("invited", person);
        model.addAttribute("link", link);
        model.addAttribute("mailed", mail.send(person, "people.mail.invitation", "people.mail.invitation.text", link));
        return show(model);
    }

    /** A new invitation, with which a forgotten password is chosen anew; those before it end. */
    @PostMapping("/{id}/invitation")
    String again(@PathVariable UUID id, Model model) {
        Person person = people.get(shop.id(), id).person();
        links.end(id);
        return invited(person, model);
    }

    @PostMapping("/{id}/role")
    String change(
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") Role role,
            Model model,
            HttpServletResponse response) {
        return done(() -> people.change(shop.id(), id, role), model, response);
    }

    /** Whoever is removed is out at once, in every browser. */
    @PostMapping("/{id}/remove")
    String remove(@PathVariable UUID id, Model model, HttpServletResponse response) {
        String address = people.get(shop.id(), id).person().mail();
        return done(
                () -> {
                    people.remove(shop.id(), id);
                    sessions.endAll(address);
                },
                model,
                response);
    }

    @PostMapping("/{id}/sessions/end")
    String endSessions(@PathVariable UUID id) {
        sessions.endAll(people.get(shop.id(), id).person().mail());
        return "redirect:/settings/people?said=sessions-ended";
    }

    private String done(Runnable change, Model model, HttpServletResponse response) {
        Form form = Form.empty().put("role", Role.TECHNICIAN.name());
        try {
            change.run();
            return "redirect:/settings/people?said=people-changed";
        } catch (Refused refused) {
            if (refused.mistakes().isEmpty()) {
                throw refused;
            }
            reader.refuse(form, InvitationEntry.class, refused);
            form.notTaken(response);
            return page(form, model);
        }
    }

    private String page(Form form, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("members", people.of(shop.id()));
        model.addAttribute("roles", Role.values());
        return "people/people";
    }
}
