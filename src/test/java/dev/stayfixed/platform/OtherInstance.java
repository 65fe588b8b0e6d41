package dev.stayfixed.platform;

import dev.stayfixed.StayfixedApplication;
import java.util.List;
import java.util.stream.Stream;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.ConfigurableApplicationContext;

/** One more instance of the whole service in this process, with a port and connections of its own. Nothing goes on in its background. */
public final class OtherInstance implements AutoCloseable {

    private final ConfigurableApplicationContext context;
    private final int port;

    /** @param settings each as name=value */
    public OtherInstance(JdbcConnectionDetails database, String... settings) {
        this(database.getJdbcUrl(), database, settings);
    }

    /** As above, by another way to the same database. */
    public OtherInstance(String url, JdbcConnectionDetails database, String... settings) {
        this(url, String.valueOf(database.getUsername()), String.valueOf(database.getPassword()), settings);
    }

    public OtherInstance(String url, String user, String secret, String... settings) {
        List<String> own = List.of(
                "server.port=0",
                "spring.datasource.url=" + url,
                "spring.datasource.username=" + user,
                "spring.datasource.password=" + secret,
                "stayfixed.background=false");
        context = new SpringApplicationBuilder(StayfixedApplication.class)
                .run(Stream.concat(own.stream(), Stream.of(settings))
                        .map(setting -> "--" + setting)
                        .toArray(String[]::new));
        port = context.getEnvironment().getRequiredProperty("local.server.port", Integer.class);
    }

    /** At which it listens, or did until it was closed. */
    public int port() {
        return port;
    }

    /** Where it tells of its health, if a setting gave it such a port. */
    public int managementPort() {
        return context.getEnvironment().getRequiredProperty("local.management.port", Integer.class);
    }

    @Override
    public void close() {
        context.close();
    }
}
