package dev.stayfixed.bench;

import java.util.Map;
import java.util.UUID;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.autoconfigure.EnableAutoConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.web.servlet.function.RouterFunction;
import org.springframework.web.servlet.function.RouterFunctions;
import org.springframework.web.servlet.function.ServerResponse;

/**
 * What a durable POST costs that does nothing but keep its body: one insert, and on H2 the sync without which it could be lost. No
 * stereotype, so that the service does not find it on the class path of the tests.
 */
@EnableAutoConfiguration
class OneInsert {

    private static final String TABLE = "create table kept (id uuid primary key, body varchar(100000))";

    @Bean
    RouterFunction<ServerResponse> keep(JdbcClient jdbc, @Value("${spring.datasource.url}") String url) {
        jdbc.sql(TABLE).update();
        boolean syncsNothingByItself = url.startsWith("jdbc:h2:");
        return RouterFunctions.route()
                .POST("/kept", request -> {
                    UUID id = UUID.randomUUID();
                    jdbc.sql("insert into kept (id, body) values (?, ?)")
                            .params(id, request.body(String.class))
                            .update();
                    if (syncsNothingByItself) {
                        jdbc.sql("checkpoint sync").update();
                    }
                    return ServerResponse.status(201).body(Map.of("id", id));
                })
                .build();
    }
}
