package dev.stayfixed.people.access;

import dev.stayfixed.people.Member;
import dev.stayfixed.people.People;
import dev.stayfixed.people.PeopleSettings;
import dev.stayfixed.platform.http.Turnstile;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.time.Duration;
import java.util.UUID;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;

/** Lets people in, and out again. */
@Component
public class SignIn {

    private final AuthenticationManager passwords;
    private final SignedIn signedIn;
    private final People people;
    private final Turnstile ofOne;
    private final Turnstile ofOneAddress;

    SignIn(AuthenticationManager passwords, SignedIn signedIn, People people, PeopleSettings settings) {
        this.passwords = passwords;
        this.signedIn = signedIn;
        this.people = people;
        this.ofOne = new Turnstile(settings.triesPerMinute());
        this.ofOneAddress = new Turnstile(4 * settings.triesPerMinute());
    }

    /**
     * Whether the password is that of the person, who then is in.
     *
     * @throws Refused where passwords are tried faster than a person types
     */
    public boolean byPassword(String mail, String password, HttpServletRequest request, HttpServletResponse response) {
        boolean right = isPassword(mail, password, request);
        if (right) {
            enter(mail, request, response);
        }
        return right;
    }

    /**
     * Whether the password is that of the person.
     *
     * @throws Refused where passwords are tried faster than a person types
     */
    public boolean isPassword(String mail, String password, HttpServletRequest request) {
        slow(mail, request);
        try {
            passwords.authenticate(
                    UsernamePasswordAuthenticationToken.unauthenticated(People.sameMail(mail), password));
            return true;
        } catch (AuthenticationException wrong) {
            return false;
        }
    }

    /**
     * Counts a try to come in.
     *
     * @throws Refused where there were too many for this person, or from this address
     */
    public void slow(String mail, HttpServletRequest request) {
        Duration one = ofOne.enter(People.sameMail(mail));
        Duration address = ofOneAddress.enter(request.getRemoteAddr());
        Duration longest = one.compareTo(address) > 0 ? one : address;
        if (!longest.isZero()) {
            throw new Refused(
                    ProblemType.TOO_MANY_REQUESTS,
                    "found more tries to sign in than a person makes, expected the next one after %d seconds"
                            .formatted(longest.toSeconds()));
        }
    }

    /** Opens a session for whoever has shown who they are. */
    public void enter(String mail, HttpServletRequest request, HttpServletResponse response) {
        Member member = people.memberships(mail).get(0);
        SecurityContext context = SecurityContextHolder.createEmptyContext();
        context.setAuthentication(Asker.person(member));
        SecurityContextHolder.setContext(context);
        signedIn.saveContext(context, request, response);
    }

    /** Goes on in another shop of the same person. */
    public void choose(HttpServletRequest request, UUID shop) {
        SignedIn.choose(request, shop);
    }

    public void leave(HttpServletRequest request) {
        HttpSession session = request.getSession(false);
        if (session != null) {
            session.invalidate();
        }
        SecurityContextHolder.clearContext();
    }
}
