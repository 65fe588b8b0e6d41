package dev.stayfixed.platform;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** The service is to speak a language of which it has no texts: it does not start, because English would look like a mistake of ours. */
final class UnknownLanguage extends RuntimeException {

    UnknownLanguage(String found) {
        super("stayfixed.language: found \"" + found
                + "\", expected en, or the code of a language of which there are texts, as languages/de.properties holds those"
                + " of de");
    }

    /** What a start says of it. */
    static final class Analysis extends AbstractFailureAnalyzer<UnknownLanguage> {
        @Override
        protected FailureAnalysis analyze(Throwable failure, UnknownLanguage cause) {
            return new FailureAnalysis(
                    cause.getMessage(),
                    "Take the setting out, which is English, or correct it where it stands (a file of settings, the command line or"
                            + " STAYFIXED_LANGUAGE); DEVELOPERS.md says how a language is added.",
                    cause);
        }
    }
}
