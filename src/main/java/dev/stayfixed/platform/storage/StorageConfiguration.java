package dev.stayfixed.platform.storage;

import com.zaxxer.hikari.HikariDataSource;
import dev.stayfixed.platform.CurrentShop;
import io.micrometer.core.instrument.MeterRegistry;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.boot.flyway.autoconfigure.FlywayConfigurationCustomizer;
import org.springframework.boot.flyway.autoconfigure.FlywayMigrationStrategy;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DelegatingDataSource;
import org.springframework.transaction.PlatformTransactionManager;

/** Chooses by the database product. */
@Configuration(proxyBeanMethods = false)
class StorageConfiguration {

    /** An H2 file is private before anything opens it. */
    @Bean
    static BeanPostProcessor privateFile() {
        return new BeanPostProcessor() {
            @Override
            public Object postProcessAfterInitialization(Object bean, String name) {
                if (bean instanceof JdbcConnectionDetails database) {
                    H2File.of(database.getJdbcUrl()).ifPresent(StorageConfiguration::makePrivate);
                }
                return bean;
            }
        };
    }

    private static void makePrivate(H2File file) {
        try {
            file.makePrivate();
        } catch (IOException e) {
            throw new NotDone(
                    "the database " + file.path().toAbsolutePath() + ": found " + e
                            + ", expected a file that only the account of the service reads and writes",
                    "Let it belong to the account that runs the service, in a folder of that account.",
                    e);
        }
    }

    /** What differs between the databases in the migrations: the type for long binary data, and the order of text by its bytes. */
    @Bean
    FlywayConfigurationCustomizer wordsOfTheProduct() {
        return flyway -> {
            DataSource dataSource = flyway.getDataSource();
            flyway.placeholders(words(Product.of(dataSource))).dataSource(new PatientConnections(dataSource));
        };
    }

    static Map<String, String> words(Product product) {
        return product == Product.H2
                ? Map.of("bytes", "binary large object", "by_bytes", "")
                : Map.of("bytes", "bytea", "by_bytes", "collate \"C\"");
    }

    /** Whoever asks for connections gets these. */
    @Bean
    static BeanPostProcessor connectionsOfShops(ObjectProvider<CurrentShop> shop) {
        return new BeanPostProcessor() {
            @Override
            public Object postProcessAfterInitialization(Object bean, String name) {
                return bean instanceof HikariDataSource pool ? new ShopConnections(pool, shop.getObject()) : bean;
            }
        };
    }

    /** The migrations run before anything reads or writes, and so does a move; then the fences between the shops stand. */
    @Bean
    FlywayMigrationStrategy migrations(StorageSettings settings) {
        String from = settings.moveFrom();
        return flyway -> {
            DataSource database = flyway.getConfiguration().getDataSource();
            boolean fenced = Product.of(database) == Product.POSTGRESQL;
            if (fenced && flyway.info().pending().length > 0) {
                asOwner(database, fences -> {
                    fences.lower();
                    return true;
                });
            }
            if (from == null || from.isBlank()) {
                flyway.migrate();
            } else {
                new MoveFromH2(from).into(flyway);
            }
            if (fenced) {
                RowFences.Bound bound = asOwner(database, RowFences::raise);
                unwrapped(database).fence(bound);
            }
        };
    }

    /** What is done to the fences. */
    private interface OnFences<T> {
        T run(RowFences fences) throws SQLException;
    }

    private static <T> T asOwner(DataSource database, OnFences<T> work) {
        try (Connection owner = database.getConnection()) {
            owner.setAutoCommit(false);
            T done = work.run(new RowFences(owner));
            owner.commit();
            return done;
        } catch (SQLException e) {
            throw new IllegalStateException("the fences between the shops could not be put up: " + e.getMessage(), e);
        }
    }

    private static ShopConnections unwrapped(DataSource database) {
        try {
            return database.unwrap(ShopConnections.class);
        } catch (SQLException e) {
            throw new IllegalStateException("found no connections that can be told their shop", e);
        }
    }

    /** A migration of a large table may take longer than any statement of a request. */
    private static final class PatientConnections extends DelegatingDataSource {

        PatientConnections(DataSource dataSource) {
            super(dataSource);
        }

        @Override
        public Connection getConnection() throws SQLException {
            Connection connection = super.getConnection();
            connection.setNetworkTimeout(Runnable::run, 0);
            return connection;
        }
    }

    @Bean
    Durably durably(
            DataSource dataSource,
            PlatformTransactionManager manager,
            JdbcClient jdbc,
            ObjectProvider<MeterRegistry> meters) {
        if (Product.of(dataSource) == Product.H2) {
            return new OneWriterSynced(
                    manager,
                    jdbc,
                    timed(meters, () -> jdbc.sql("checkpoint sync").update()),
                    () -> dropConnections(dataSource));
        }
        refuseLazyCommits(jdbc);
        return new Transactions(manager, jdbc);
    }

    /** The registry is asked for when there is something to measure: it must not come before the database. */
    private static Runnable timed(ObjectProvider<MeterRegistry> meters, Runnable sync) {
        return () -> {
            MeterRegistry registry = meters.getIfAvailable();
            if (registry == null) {
                sync.run();
            } else {
                registry.timer("stayfixed.sync").record(sync);
            }
        };
    }

    /** The disk of a PostgreSQL is its own affair; it says when it is full. */
    @Bean
    FreeSpace freeSpace(DataSource dataSource, JdbcClient jdbc, InstanceFolder folder) {
        List<Path> paths = new ArrayList<>(List.of(folder.path()));
        if (Product.of(dataSource) == Product.H2) {
            Product.fileOf(jdbc).ifPresent(paths::add);
        }
        return new Disks(paths);
    }

    private static void dropConnections(DataSource dataSource) {
        try {
            dataSource.unwrap(HikariDataSource.class).getHikariPoolMXBean().softEvictConnections();
        } catch (SQLException e) {
            throw new IllegalStateException("found no connection pool of HikariCP", e);
        }
    }

    private static void refuseLazyCommits(JdbcClient jdbc) {
        String setting = jdbc.sql("show synchronous_commit").query(String.class).single();
        if (setting.equals("off")) {
            throw new IllegalStateException(
                    "PostgreSQL runs with synchronous_commit=off and would lose acknowledged drives in a"
                            + " crash; set it to on for this database or role, for example: alter role stayfixed set"
                            + " synchronous_commit = on");
        }
    }
}
