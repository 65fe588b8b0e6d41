package dev.stayfixed.people.access;

import dev.stayfixed.people.People;
import dev.stayfixed.people.PeopleSettings;
import dev.stayfixed.people.Tokens;
import dev.stayfixed.platform.storage.Durably;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.authentication.ProviderManager;
import org.springframework.security.authentication.dao.DaoAuthenticationProvider;
import org.springframework.security.authorization.AuthorizationDecision;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configuration.EnableWebSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.authentication.AnonymousAuthenticationFilter;
import org.springframework.security.web.authentication.AuthenticationFilter;
import org.springframework.session.jdbc.config.annotation.SpringSessionDataSource;
import org.springframework.transaction.support.TransactionOperations;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Who a request comes from, and whether it may come in. Forms are kept from other sites' pages by their own fence and token
 * (platform/http, web/pages): both must not read a body before it is known who asks, and this filter reads none.
 */
@Configuration(proxyBeanMethods = false)
@EnableWebSecurity
class Access {

    @Bean
    SignedIn signedIn(People people, PeopleSettings settings, Clock clock) {
        return new SignedIn(people, settings, clock);
    }

    @Bean
    AtThisMachine atThisMachine(People people, Clock clock) {
        return new AtThisMachine(people, clock);
    }

    /** It stands in the chain below, and is no filter of its own. */
    @Bean
    FilterRegistrationBean<AtThisMachine> notByItself(AtThisMachine filter) {
        FilterRegistrationBean<AtThisMachine> registration = new FilterRegistrationBean<>(filter);
        registration.setEnabled(false);
        return registration;
    }

    @Bean
    AuthenticationManager passwordManager(People people, PasswordEncoder encoder) {
        Passwords passwords = new Passwords(people);
        DaoAuthenticationProvider provider = new DaoAuthenticationProvider(passwords);
        provider.setPasswordEncoder(encoder);
        provider.setUserDetailsPasswordService(passwords);
        return new ProviderManager(provider);
    }

    @Bean
    SecurityFilterChain chain(HttpSecurity http, SignedIn signedIn, AtThisMachine atThisMachine, Tokens tokens)
            throws Exception {
        Refusals refusals = new Refusals();
        return http.csrf(AbstractHttpConfigurer::disable)
                .headers(AbstractHttpConfigurer::disable)
                .logout(AbstractHttpConfigurer::disable)
                .requestCache(AbstractHttpConfigurer::disable)
                .sessionManagement(AbstractHttpConfigurer::disable)
                .securityContext(context -> context.securityContextRepository(signedIn))
                .addFilterBefore(atThisMachine, AnonymousAuthenticationFilter.class)
                .addFilterBefore(byToken(tokens, refusals), AtThisMachine.class)
                .exceptionHandling(
                        told -> told.authenticationEntryPoint(refusals).accessDeniedHandler(refusals))
                .authorizeHttpRequests(doors -> doors.anyRequest()
                        .access((asker, request) -> new AuthorizationDecision(Doors.need(
                                        request.getRequest().getMethod(),
                                        request.getRequest().getRequestURI())
                                .isMetBy(Optional.of(asker.get())
                                        .filter(Asker.class::isInstance)
                                        .map(Asker.class::cast)))))
                .build();
    }

    private static AuthenticationFilter byToken(Tokens tokens, Refusals refusals) {
        ByToken byToken = new ByToken(tokens);
        AuthenticationFilter filter = new AuthenticationFilter(new ProviderManager(List.of(byToken)), byToken);
        filter.setFailureHandler(refusals::commence);
        filter.setSuccessHandler((request, response, program) -> {});
        return filter;
    }

    /** Sessions are written by a library, so on H2 they wait for their turn like everything that writes. */
    @Bean(defaultCandidate = false)
    @SpringSessionDataSource
    DataSource sessionConnections(DataSource dataSource, Durably durably) {
        return durably.connections(dataSource);
    }

    @Bean(name = "springSessionTransactionOperations")
    TransactionOperations sessionTransactions(@SpringSessionDataSource DataSource connections) {
        return new TransactionTemplate(new DataSourceTransactionManager(connections));
    }

    @Bean
    HashedSessions hashedSessions() {
        return new HashedSessions();
    }
}
