package dev.stayfixed.platform.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.platform.OnPostgres;
import io.micrometer.core.instrument.MeterRegistry;
import java.sql.Connection;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import org.springframework.transaction.PlatformTransactionManager;

@OnPostgres
class LazyCommitsTest {

    @Autowired
    DataSource dataSource;

    @Autowired
    PlatformTransactionManager manager;

    @Autowired
    Durably durably;

    @Autowired
    JdbcClient plain;

    @Autowired
    ObjectProvider<MeterRegistry> meters;

    @Test
    void aServerThatAnswersBeforeItHasSyncedIsRefused() throws Exception {
        try (Connection connection = dataSource.getConnection()) {
            var one = new SingleConnectionDataSource(connection, true);
            JdbcClient jdbc = JdbcClient.create(one);
            StorageConfiguration storage = new StorageConfiguration();
            jdbc.sql("set synchronous_commit = off").update();
            assertThatThrownBy(() -> storage.durably(one, manager, jdbc, meters))
                    .hasMessageContaining("synchronous_commit=off");
            jdbc.sql("reset synchronous_commit").update();
            assertThat(storage.durably(one, manager, jdbc, meters)).isExactlyInstanceOf(Transactions.class);
        }
    }

    @Test
    void onlyWhatIsDerivedDoesNotWaitForTheDisk() {
        List<String> settings = new ArrayList<>();
        Runnable ask = () -> settings.add(
                plain.sql("show synchronous_commit").query(String.class).single());
        durably.derive(ask);
        durably.write(ask);
        assertThat(settings).containsExactly("off", "on");
    }
}
