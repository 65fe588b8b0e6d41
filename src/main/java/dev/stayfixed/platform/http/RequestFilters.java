package dev.stayfixed.platform.http;

import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.platform.storage.FreeSpace;
import dev.stayfixed.platform.storage.StoredAnswers;
import java.util.Objects;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.util.unit.DataSize;

/** The filters, in their order. */
@Configuration(proxyBeanMethods = false)
class RequestFilters {

    @Bean
    FilterRegistrationBean<SecurityHeaders> securityHeaders() {
        return at(1, new SecurityHeaders());
    }

    @Bean
    FilterRegistrationBean<EnoughSpace> enoughSpace(FreeSpace space, @Value("${stayfixed.keep-free}") DataSize keep) {
        return at(2, new EnoughSpace(space, keep.toBytes()));
    }

    @Bean
    FilterRegistrationBean<WholeBody> wholeBody(
            @Value("${stayfixed.body-limit}") DataSize limit,
            @Value("${stayfixed.log-limit}") DataSize logLimit,
            FilterRegistrationBean<EnoughSpace> enoughSpace) {
        EnoughSpace space = Objects.requireNonNull(enoughSpace.getFilter());
        return at(3, new WholeBody(limit.toBytes(), new LongBody(logLimit.toBytes(), space)));
    }

    @Bean
    FilterRegistrationBean<LimitedWrites> limitedWrites(@Value("${stayfixed.writes-at-once}") int most) {
        return at(4, new LimitedWrites(most));
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
