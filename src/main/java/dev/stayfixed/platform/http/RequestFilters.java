package dev.stayfixed.platform.http;

import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.platform.storage.FreeSpace;
import dev.stayfixed.platform.storage.StoredAnswers;
import java.util.Objects;
import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The filters, in their order. */
@Configuration(proxyBeanMethods = false)
class RequestFilters {

    @Bean
    FilterRegistrationBean<SecurityHeaders> securityHeaders() {
        return at(1, new SecurityHeaders());
    }

    @Bean
    FilterRegistrationBean<EnoughSpace> enoughSpace(FreeSpace space, Limits limits) {
        return at(2, new EnoughSpace(space, limits.keepFree().toBytes()));
    }

    @Bean
    FilterRegistrationBean<WholeBody> wholeBody(Limits limits, FilterRegistrationBean<EnoughSpace> enoughSpace) {
        EnoughSpace space = Objects.requireNonNull(enoughSpace.getFilter());
        return at(
                3,
                new WholeBody(
                        limits.bodyLimit().toBytes(),
                        new LongBody(limits.logLimit().toBytes(), space)));
    }

    @Bean
    FilterRegistrationBean<LimitedWrites> limitedWrites(Limits limits) {
        return at(4, new LimitedWrites(limits.writesAtOnce()));
    }

    @Bean
    FilterRegistrationBean<RepeatedRequests> repeatedRequests(Durably durably, StoredAnswers answers) {
        return at(5, new RepeatedRequests(durably, answers));
    }

    private static <F extends jakarta.servlet.Filter> FilterRegistrationBean<F> at(int order, F filter) {
        FilterRegistrationBean<F> registration = new FilterRegistrationBean<>(filter);
        registration.setOrder(order);
        registration.addUrlPatterns("/*");
        return registration;
    }
}
