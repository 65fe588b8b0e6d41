package dev.stayfixed.platform;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** What a driver or a customer reads: it comes in a language of theirs, and not in that of the service. */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
public @interface ForReaders {

    /** Which says in what language. */
    By by() default By.LINK_OR_BROWSER;

    /** Who chooses. */
    enum By {
        /** They do: the address they were given, what they chose before, or else their browser. */
        LINK_OR_BROWSER,
        /** A technician makes it for them: the address alone. */
        LINK
    }
}
