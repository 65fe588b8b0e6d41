package dev.stayfixed.platform.storage;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** What a start was asked to do first, and did not do: the service does not start, because it would go on without what it was to have. */
final class NotDone extends RuntimeException {

    private final String remedy;

    /**
     * A refusal that the start prints.
     *
     * @param found what was found, where, and what was expected
     * @param remedy what to do
     */
    NotDone(String found, String remedy) {
        super(found);
        this.remedy = remedy;
    }

    NotDone(String found, String remedy, Exception cause) {
        this(found, remedy);
        initCause(cause);
    }

    String remedy() {
        return remedy;
    }

    /** What a start says of it. */
    static final class Analysis extends AbstractFailureAnalyzer<NotDone> {
        @Override
        protected FailureAnalysis analyze(Throwable failure, NotDone cause) {
            return new FailureAnalysis(cause.getMessage(), cause.remedy(), cause);
        }
    }
}
