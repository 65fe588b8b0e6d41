package dev.stayfixed.people.access;

import dev.stayfixed.people.Member;
import dev.stayfixed.people.People;
import dev.stayfixed.people.PeopleSettings;
import dev.stayfixed.platform.Sha256;
import dev.stayfixed.platform.http.Turnstile;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.time.Duration;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.authentication.InternalAuthenticationServiceException;
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
        } catch (InternalAuthenticationServiceException e) {
            throw e.getCause() instanceof Refused databaseAway ? databaseAway : e;
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
        Duration longest = ofOneAddress.enter(request.getRemoteAddr());
        if (longest.isZero()) {
            // A digest: what is typed may be long, and would be kept.
            longest = ofOne.enter(Sha256.hex(People.sameMail(mail)));
        }
        if (!longest.isZero()) {
            throw new Refused(
                    ProblemType.TOO_MANY_REQUESTS,
                    "found more tries to sign in than a person makes, expected the next one after %d seconds"
                            .formatted(longest.toSeconds()));
        }
    }

    /** Opens a session for whoever has shown who they are. */
    public void enter(String mail, HttpServletRequest request, HttpServletResponse response) {
        Member member = people.memberships(mail).stream()
                .findFirst()
                .orElseThrow(() -> new Refused(
                        ProblemType.SIGN_IN_NEEDED,
                        "found somebody who was removed just now, expected a member of a shop"));
        SecurityContext context = SecurityContextHolder.createEmptyContext();
        context.setAuthentication(Asker.person(member));
        SecurityContextHolder.setContext(context);
        signedIn.saveContext(context, request, response);
    }

    public void leave(HttpServletRequest request) {
        HttpSession session = request.getSession(false);
        if (session != null) {
            session.invalidate();
        }
        SecurityContextHolder.clearContext();
    }
}
