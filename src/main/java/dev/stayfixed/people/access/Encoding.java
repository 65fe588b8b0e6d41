package dev.stayfixed.people.access;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;

/** How passwords are kept. */
@Configuration(proxyBeanMethods = false)
class Encoding {

    /** Argon2id, 19 MiB, 2 passes, 1 lane: OWASP Password Storage Cheat Sheet (from memory). */
    @Bean
    PasswordEncoder passwordEncoder() {
        return new Argon2PasswordEncoder(16, 32, 1, 19 * 1024, 2);
    }
}
