package dev.stayfixed.people.access;

import dev.stayfixed.people.Member;
import dev.stayfixed.people.Right;
import dev.stayfixed.people.Role;
import dev.stayfixed.people.Tokens;
import dev.stayfixed.platform.CurrentShop;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.security.authentication.AbstractAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;

/** Whoever a request is told to come from: a person of a shop, a program with a token, or the owner at the machine of the service. */
public final class Asker extends AbstractAuthenticationToken {

    private final String name;
    private final UUID shop;
    private final Set<Right> rights;
    private final transient @Nullable Member member;

    private Asker(String name, UUID shop, Set<Right> rights, @Nullable Member member) {
        super(Set.of());
        this.name = name;
        this.shop = shop;
        this.rights = rights;
        this.member = member;
        setAuthenticated(true);
    }

    static Asker person(Member member) {
        return new Asker(member.person().mail(), member.shop(), member.role().rights(), member);
    }

    static Asker program(Tokens.Token token) {
        return new Asker(token.name(), token.shop(), token.scope().rights(), null);
    }

    /** Who sits at this machine, before there are people. */
    static Asker atThisMachine() {
        return new Asker("this machine", CurrentShop.DEFAULT, Role.OWNER.rights(), null);
    }

    /** Of the request at hand; empty where nobody is known. */
    public static Optional<Asker> now() {
        return SecurityContextHolder.getContext().getAuthentication() instanceof Asker asker
                ? Optional.of(asker)
                : Optional.empty();
    }

    public boolean may(Right right) {
        return rights.contains(right);
    }

    public boolean owns() {
        return may(Right.OWN);
    }

    public UUID shop() {
        return shop;
    }

    /** Empty for programs, and at this machine before there are people. */
    public Optional<Member> member() {
        return Optional.ofNullable(member);
    }

    /** The mail of a person, or what a token is called. */
    @Override
    public String getName() {
        return name;
    }

    @Override
    public String getPrincipal() {
        return name;
    }

    @Override
    public @Nullable Object getCredentials() {
        return null;
    }
}
