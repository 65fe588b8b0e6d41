package dev.stayfixed.platform.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicInteger;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.springframework.jdbc.datasource.DriverManagerDataSource;

class DerivedTest {

    private final DataSource source = new DriverManagerDataSource("jdbc:h2:mem:derived;DB_CLOSE_DELAY=-1");
    private final JdbcClient jdbc = JdbcClient.create(source);
    private final AtomicInteger syncs = new AtomicInteger();
    private final Durably durably =
            new OneWriterSynced(new DataSourceTransactionManager(source), jdbc, syncs::incrementAndGet, () -> {});

    @Test
    void itIsWrittenWhollyOrNotAtAllAndWaitsForNoSync() {
        jdbc.sql("create table told (words varchar(20))").update();

        durably.derive(() -> tell("derived"));
        assertThat(told()).isEqualTo(1);
        assertThat(syncs).hasValue(0);

        assertThatThrownBy(() -> durably.derive(() -> {
                    tell("half");
                    throw new IllegalStateException("no more");
                }))
                .hasMessage("no more");
        assertThat(told()).isEqualTo(1);

        CompletableFuture.runAsync(() -> durably.write(() -> tell("sent"))).join();
        assertThat(told()).isEqualTo(2);
        assertThat(syncs).hasValue(1);
    }

    private void tell(String words) {
        jdbc.sql("insert into told values (?)").param(words).update();
    }

    private int told() {
        return jdbc.sql("select count(*) from told").query(Integer.class).single();
    }
}
