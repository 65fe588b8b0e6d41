package dev.stayfixed.demo;

import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.platform.CurrentShop;
import java.time.Clock;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.annotation.Profile;
import org.springframework.context.event.EventListener;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** Fills an empty database with the demo, once. */
@Component
@Profile("demo")
class DemoShop {

    private static final Logger LOG = LoggerFactory.getLogger(DemoShop.class);
    private static final String SCENARIO = "scenario.json";

    private final Vehicles vehicles;
    private final CurrentShop shop;
    private final Clock clock;

    DemoShop(Vehicles vehicles, CurrentShop shop, Clock clock) {
        this.vehicles = vehicles;
        this.shop = shop;
        this.clock = clock;
    }

    @Order(1)
    @EventListener
    void fill(ApplicationReadyEvent ready) {
        if (!shop.in(CurrentShop.DEFAULT, vehicles::all).isEmpty()) {
            LOG.info("the demo is already there; delete the folder data to begin anew");
        } else if (!ScenarioPlayer.exists(SCENARIO)) {
            LOG.warn("there is no sample-logs/{}: the service starts empty", SCENARIO);
        } else if (ready.getApplicationContext() instanceof WebServerApplicationContext web
                && web.getWebServer() != null) {
            String host = web.getEnvironment().getProperty("server.address", "127.0.0.1");
            String service = "http://%s:%d".formatted(host, web.getWebServer().getPort());
            play(new ScenarioPlayer(service, new Blanks(clock.instant())));
        }
    }

    private static void play(ScenarioPlayer player) {
        try {
            LOG.info("the demo was loaded with {} requests", player.play(SCENARIO));
        } catch (IllegalStateException e) {
            LOG.error("the demo stopped half-way; delete the folder data and start again to retry", e);
        }
    }
}
