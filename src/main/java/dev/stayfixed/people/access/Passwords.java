package dev.stayfixed.people.access;

import dev.stayfixed.people.People;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.userdetails.User;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsPasswordService;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.core.userdetails.UsernameNotFoundException;

/** People as the framework's providers ask for them. */
record Passwords(People people) implements UserDetailsService, UserDetailsPasswordService {

    /** Of whoever has no password: no digest is ever this. */
    private static final String NONE = "none";

    @Override
    public UserDetails loadUserByUsername(String mail) {
        if (people.memberships(mail).isEmpty()) {
            throw new UsernameNotFoundException("nobody here has this address");
        }
        return new User(People.sameMail(mail), people.passwordDigest(mail).orElse(NONE), List.of());
    }

    @Override
    public UserDetails updatePassword(UserDetails user, @Nullable String digest) {
        if (digest != null) {
            people.keepDigest(user.getUsername(), digest);
        }
        return new User(user.getUsername(), digest, List.of());
    }
}
