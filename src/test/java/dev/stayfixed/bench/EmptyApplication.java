package dev.stayfixed.bench;

import java.util.Map;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.EnableAutoConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.web.servlet.function.RouterFunction;
import org.springframework.web.servlet.function.RouterFunctions;
import org.springframework.web.servlet.function.ServerResponse;

/**
 * What an application costs that has the same starters, configures none of them and does nothing. No stereotype, so that the service
 * does not find it on the class path of the tests.
 */
@EnableAutoConfiguration
class EmptyApplication {

    public static void main(String[] args) {
        SpringApplication.run(EmptyApplication.class, args);
    }

    @Bean
    RouterFunction<ServerResponse> nothing() {
        return RouterFunctions.route()
                .GET("/", request -> ServerResponse.ok().body(Map.of("items", new String[0])))
                .build();
    }
}
