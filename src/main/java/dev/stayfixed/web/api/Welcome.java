package dev.stayfixed.web.api;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** Says where to look, once everything is ready. */
@Component
class Welcome {

    private static final Logger LOG = LoggerFactory.getLogger(Welcome.class);

    @Order(Ordered.LOWEST_PRECEDENCE)
    @EventListener
    void tell(ApplicationReadyEvent ready) {
        if (ready.getApplicationContext() instanceof WebServerApplicationContext web && web.getWebServer() != null) {
            LOG.info(
                    "Stayfixed is ready: open http://localhost:{}/api/docs",
                    web.getWebServer().getPort());
        }
    }
}
