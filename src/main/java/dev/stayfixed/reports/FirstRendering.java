package dev.stayfixed.reports;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * The first PDF takes ten times as long as the next, so one is made in the background, for nobody, once the service has answered for a
 * while: right after the start it would take its time and its memory from the first who ask.
 */
@Component
class FirstRendering implements DisposableBean {

    private static final Logger LOG = LoggerFactory.getLogger(FirstRendering.class);

    private final ReportPdf pdf;
    private final Clock clock;
    private volatile CompletableFuture<Void> waiting = new CompletableFuture<>();

    FirstRendering(ReportPdf pdf, Clock clock) {
        this.pdf = pdf;
        this.clock = clock;
    }

    @EventListener(ApplicationReadyEvent.class)
    void start() {
        waiting = CompletableFuture.runAsync(this::render, CompletableFuture.delayedExecutor(1, TimeUnit.MINUTES));
    }

    /** A service that has ended makes none. */
    @Override
    public void destroy() {
        waiting.cancel(false);
    }

    private void render() {
        try {
            ReportFacts facts = nothing(clock.instant());
            pdf.of(facts, Fingerprint.of(facts), clock.instant());
        } catch (RuntimeException e) {
            LOG.warn("no PDF could be made; reports will fail until this is mended", e);
        }
    }

    private static ReportFacts nothing(Instant now) {
        return new ReportFacts(
                ReportFacts.FORMAT,
                ReportFacts.State.INTERIM,
                "none",
                new ReportFacts.OfVehicle("none", null, null, null, "spark ignition"),
                new ReportFacts.OfJob(new UUID(0, 0), null, null, now, null, null),
                "none",
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }
}
