package dev.stayfixed.platform.http;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A host and its port, as a Host header and an address name them (RFC 9110 section 7.2, RFC 3986 section 3.2).
 *
 * @param host in lower case; an IPv6 address stands in brackets
 * @param port empty where none is named, which means the usual one
 */
record Authority(String host, OptionalInt port) {

    private static final Pattern FORM = Pattern.compile("(\\[[0-9a-f:.]+]|[0-9a-z._-]+)(?::(\\d{0,5}))?");

    /** Empty where the text is none. */
    static Optional<Authority> of(String text) {
        Matcher parts = FORM.matcher(text.toLowerCase(Locale.ROOT));
        return parts.matches()
                ? Optional.of(new Authority(parts.group(1), port(Optional.ofNullable(parts.group(2)))))
                : Optional.empty();
    }

    private static OptionalInt port(Optional<String> digits) {
        return digits.filter(text -> !text.isEmpty())
                .map(text -> OptionalInt.of(Integer.parseInt(text)))
                .orElse(OptionalInt.empty());
    }
}
