package dev.stayfixed.people.access;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Others could reach the service, and what they send could be read on the way: it does not start. */
final class ReadOnTheWay extends RuntimeException {

    /** @param address on which it was to listen */
    ReadOnTheWay(String address) {
        super("server.address: found " + address
                + ", which others reach, and nothing that keeps what they send from being read on the way; expected TLS, or a proxy"
                + " that has it");
    }

    /** What a start says of it. */
    static final class Analysis extends AbstractFailureAnalyzer<ReadOnTheWay> {
        @Override
        protected FailureAnalysis analyze(Throwable failure, ReadOnTheWay cause) {
            return new FailureAnalysis(
                    cause.getMessage(),
                    "Set server.ssl.bundle or server.ssl.certificate, or name the address of the proxy in stayfixed.proxy, or listen to"
                            + " this machine only with server.address=127.0.0.1.",
                    cause);
        }
    }
}
