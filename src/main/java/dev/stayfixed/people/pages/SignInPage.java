package dev.stayfixed.people.pages;

import dev.stayfixed.customer.LinkAddress;
import dev.stayfixed.people.EntryLinks;
import dev.stayfixed.people.EntryLinks.Purpose;
import dev.stayfixed.people.Member;
import dev.stayfixed.people.People;
import dev.stayfixed.people.Person;
import dev.stayfixed.people.SignInMail;
import dev.stayfixed.people.access.SignIn;
import dev.stayfixed.platform.LinkToken;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Optional;
import java.util.concurrent.Executor;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/** Where people come in. Nothing on it tells whether somebody is known here. */
@Hidden
@TechnicianPage
class SignInPage {

    private final SignIn signIn;
    private final People people;
    private final EntryLinks links;
    private final SignInMail mail;
    private final LinkAddress address;
    private final Texts texts;
    private final Executor sending;

    SignInPage(
            SignIn signIn,
            People people,
            EntryLinks links,
            SignInMail mail,
            LinkAddress address,
            Texts texts,
            @Qualifier("applicationTaskExecutor") Executor sending) {
        this.signIn = signIn;
        this.people = people;
        this.links = links;
        this.mail = mail;
        this.address = address;
        this.texts = texts;
        this.sending = sending;
    }

    @GetMapping("/sign-in")
    String show(@RequestParam(defaultValue = "") String to, Model model) {
        return people.isAnybodyHere() ? page(Form.empty().put("to", to), model) : "redirect:/first-owner";
    }

    @PostMapping("/sign-in")
    String enter(
            @RequestParam MultiValueMap<String, String> typed,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response) {
        Form form = new Form(typed);
        if (signIn.byPassword(form.value("mail"), form.value("password"), request, response)) {
            return "redirect:" + within(form.value("to"));
        }
        form.wrong(Form.WHOLE, texts.of("people.sign-in.wrong"));
        form.notTaken(response);
        return page(form, model);
    }

    /** A page of this service, and no other: an address that begins with one slash. */
    static String within(String to) {
        return to.matches("/(?:[^/\\\\\\x00-\\x20][^\\\\\\x00-\\x20]*)?") ? to : "/";
    }

    /** The answer is the same whoever asks for whom. */
    @PostMapping("/sign-in/link")
    String sendLink(@RequestParam MultiValueMap<String, String> typed, Model model, HttpServletRequest request) {
        Form form = new Form(typed);
        signIn.slow(form.value("mail"), request);
        String reached =
                ServletUriComponentsBuilder.fromCurrentContextPath().build().toUriString();
        sending.execute(() -> send(form.value("mail"), reached));
        model.addAttribute("sent", true);
        return page(form, model);
    }

    /** Beside the request, so that the time of its answer does not tell who is here. */
    private void send(String to, String reached) {
        people.memberships(to).stream()
                .map(Member::person)
                .findFirst()
                .ifPresent(person -> mail.send(
                        person,
                        "people.mail.sign-in",
                        "people.mail.sign-in.text",
                        address.to("/sign-in/link/" + links.signIn(person.id()), reached)));
    }

    /** A program that looks through mails follows links; only a press of the button uses this one up. */
    @GetMapping("/sign-in/link/{token}")
    String link(@PathVariable String token, Model model, HttpServletResponse response) {
        boolean good =
                LinkToken.hasForm(token) && links.look(Purpose.SIGN_IN, token).isPresent();
        if (!good) {
            response.setStatus(HttpServletResponse.SC_GONE);
        }
        model.addAttribute("good", good);
        model.addAttribute("token", token);
        return "people/link";
    }

    @PostMapping("/sign-in/link/{token}")
    String useLink(@PathVariable String token, Model model, HttpServletRequest request, HttpServletResponse response) {
        Optional<Person> person = LinkToken.hasForm(token) ? links.look(Purpose.SIGN_IN, token) : Optional.empty();
        if (person.isEmpty() || !links.use(Purpose.SIGN_IN, token)) {
            return link(token, model, response);
        }
        signIn.enter(person.get().mail(), request, response);
        return "redirect:/";
    }

    @PostMapping("/sign-out")
    String leave(HttpServletRequest request) {
        signIn.leave(request);
        return "redirect:/sign-in";
    }

    private String page(Form form, Model model) {
        form.all().remove("password");
        model.addAttribute("form", form);
        model.addAttribute("mails", mail.canBeSent());
        return "people/sign-in";
    }
}
