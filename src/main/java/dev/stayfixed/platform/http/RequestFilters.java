package dev.stayfixed.platform.http;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.SecretLinks;
import dev.stayfixed.platform.WhoAsks;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.platform.storage.FreeSpace;
import dev.stayfixed.platform.storage.InstanceFolder;
import dev.stayfixed.platform.storage.StoredAnswers;
import java.util.Objects;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.web.server.autoconfigure.ServerProperties;
import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.Ordered;
import org.springframework.core.env.Environment;

/** The filters, in their order. */
@Configuration(proxyBeanMethods = false)
class RequestFilters {

    /** Before any filter that writes to the log or answers. */
    @Bean
    FilterRegistrationBean<NamedRequest> namedRequest() {
        return at(Ordered.HIGHEST_PRECEDENCE, new NamedRequest());
    }

    @Bean
    FilterRegistrationBean<SecurityHeaders> securityHeaders() {
        return at(1, new SecurityHeaders());
    }

    @Bean
    OwnNames ownNames(Hosts hosts, PublicUrl url, Environment settings, ObjectProvider<ServerProperties> server) {
        // Work without a server has none.
        ServerProperties listening = server.getIfAvailable(ServerProperties::new);
        boolean concrete =
                listening.getAddress() != null && !listening.getAddress().isAnyLocalAddress();
        return OwnNames.of(hosts, url, concrete ? settings.getProperty("server.address", "") : "");
    }

    @Bean
    FilterRegistrationBean<KnownHost> knownHost(OwnNames names) {
        return at(2, new KnownHost(names));
    }

    @Bean
    FilterRegistrationBean<OwnPages> ownPages(PublicUrl url) {
        return at(3, new OwnPages(url));
    }

    /** Behind it stand the filters of sessions and of who asks; see their orders in the settings. */
    @Bean
    FilterRegistrationBean<WhileAway> whileAway() {
        return at(4, new WhileAway());
    }

    @Bean
    FilterRegistrationBean<EnoughSpace> enoughSpace(FreeSpace space, Limits limits) {
        return at(7, new EnoughSpace(space, limits.keepFree().toBytes()));
    }

    @Bean
    FilterRegistrationBean<WholeBody> wholeBody(
            Limits limits, FilterRegistrationBean<EnoughSpace> enoughSpace, InstanceFolder folder) {
        EnoughSpace space = Objects.requireNonNull(enoughSpace.getFilter());
        return at(
                8,
                new WholeBody(
                        limits.bodyLimit().toBytes(),
                        new LongBody(limits.logLimit().toBytes(), space, folder)));
    }

    @Bean
    FilterRegistrationBean<LimitedWrites> limitedWrites(Limits limits) {
        return at(9, new LimitedWrites(limits.writesAtOnce()));
    }

    /** Before whatever reads or writes rows. */
    @Bean
    FilterRegistrationBean<ShopOfRequest> shopOfRequest(
            CurrentShop shop, WhoAsks who, ObjectProvider<SecretLinks> links) {
        return at(10, new ShopOfRequest(shop, who, links));
    }

    @Bean
    FilterRegistrationBean<RepeatedRequests> repeatedRequests(
            Durably durably, StoredAnswers answers, CurrentShop shop) {
        return at(11, new RepeatedRequests(durably, answers, shop));
    }

    private static <F extends jakarta.servlet.Filter> FilterRegistrationBean<F> at(int order, F filter) {
        FilterRegistrationBean<F> registration = new FilterRegistrationBean<>(filter);
        registration.setOrder(order);
        registration.addUrlPatterns("/*");
        return registration;
    }
}
