package dev.stayfixed.platform;

import java.util.Optional;
import java.util.UUID;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Primary;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;

/** Two shops, of which a header of the request names the second. */
@TestConfiguration(proxyBeanMethods = false)
public class ShopByHeader {

    public static final UUID OTHER = UUID.fromString("00000000-0000-4000-8000-000000000002");
    public static final String HEADER = "Test-Shop";

    @Bean
    @Primary
    WhoAsks shopByHeader() {
        return new WhoAsks() {
            @Override
            public UUID shop() {
                return Optional.ofNullable((ServletRequestAttributes) RequestContextHolder.getRequestAttributes())
                        .map(request -> request.getRequest().getHeader(HEADER))
                        .map(UUID::fromString)
                        .orElse(CurrentShop.DEFAULT);
            }

            @Override
            public boolean vouches() {
                return true;
            }

            @Override
            public String name() {
                return "somebody of the test";
            }
        };
    }
}
