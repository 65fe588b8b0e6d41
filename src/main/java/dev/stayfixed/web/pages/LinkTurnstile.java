package dev.stayfixed.web.pages;

import dev.stayfixed.customer.LinkSettings;
import dev.stayfixed.platform.http.Turnstile;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** One for all links that are given away. */
@Configuration(proxyBeanMethods = false)
class LinkTurnstile {

    @Bean
    Turnstile turnstile(LinkSettings settings) {
        return new Turnstile(settings.requestsPerMinute());
    }
}
