package dev.stayfixed.people.pages;

import dev.stayfixed.people.Member;
import dev.stayfixed.people.People;
import dev.stayfixed.people.access.Asker;
import dev.stayfixed.people.access.Sessions;
import dev.stayfixed.people.access.SignIn;
import dev.stayfixed.people.entry.NewPassword;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
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

/** What a person sees to for themselves: password and sessions. */
@Hidden
@TechnicianPage
@RequestMapping("/account")
class AccountPage {

    private final People people;
    private final Sessions sessions;
    private final SignIn signIn;
    private final FormReader reader;
    private final Texts texts;

    AccountPage(People people, Sessions sessions, SignIn signIn, FormReader reader, Texts texts) {
        this.people = people;
        this.sessions = sessions;
        this.signIn = signIn;
        this.reader = reader;
        this.texts = texts;
    }

    @GetMapping
    String show(Model model, HttpServletRequest request) {
        return page(Form.empty(), model, request);
    }

    /** Whoever found an open browser has to know the password that is changed; all other sessions end. */
    @PostMapping("/password")
    String change(
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Member me = me();
        Optional<NewPassword> password = reader.read(form, NewPassword.class, show);
        if (people.passwordDigest(me.person().mail()).isPresent()
                && !signIn.isPassword(me.person().mail(), form.value("present"), request)) {
            form.wrong("present", texts.of("people.account.wrong-password"));
        }
        if (form.isWrong()) {
            form.notTaken(response);
            return page(form, model, request);
        }
        people.choosePassword(me.person().id(), password.orElseThrow().password());
        sessions.endOthers(me.person().mail(), request);
        return "redirect:/account?said=password-changed";
    }

    @PostMapping("/sessions/end")
    String end(@RequestParam(defaultValue = "") String id, HttpServletRequest request) {
        String mail = me().person().mail();
        if (id.isEmpty()) {
            sessions.endOthers(mail, request);
        } else {
            sessions.end(mail, id);
        }
        return "redirect:/account?said=sessions-ended";
    }

    private static Member me() {
        return Asker.now()
                .flatMap(Asker::member)
                .orElseThrow(() -> new Refused(
                        ProblemType.NOT_ALLOWED, "found nobody who has signed in, expected a person; sign in first"));
    }

    private String page(Form form, Model model, HttpServletRequest request) {
        form.all().remove("password");
        form.all().remove("present");
        Optional<Member> me = Asker.now().flatMap(Asker::member);
        model.addAttribute("form", form);
        model.addAttribute("me", me.orElse(null));
        model.addAttribute(
                "sessions", me.map(m -> sessions.of(m.person().mail(), request)).orElse(null));
        model.addAttribute(
                "hasPassword",
                me.flatMap(m -> people.passwordDigest(m.person().mail())).isPresent());
        return "people/account";
    }
}
