package dev.stayfixed.platform.storage;

import java.util.function.Supplier;
import javax.sql.DataSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;

/**
 * For H2. Concurrent writers can leave half a transaction after kill -9, so one writes at a time; and a commit is only in the page
 * cache until the file is synced, so the answer waits for a sync that began after the commit.
 */
final class OneWriterSynced extends Transactions {

    /** A sync takes about as long as a small write, so it adds little to each of eight, and none waits long for the others. */
    private static final int SHARE_A_SYNC = 8;

    private final OneWriter writer;

    /** @param sync forces the database file to the disk */
    OneWriterSynced(PlatformTransactionManager manager, JdbcClient jdbc, Runnable sync) {
        super(manager, jdbc);
        this.writer = new OneWriter(sync, SHARE_A_SYNC);
    }

    @Override
    public <T> T write(Supplier<T> work) {
        return writer.isMe() ? super.write(work) : writer.write(() -> super.write(work));
    }

    /** Who writes is alone. */
    @Override
    public void hold(String name) {}

    @Override
    public DataSource connections(DataSource dataSource) {
        return new OneWriterConnections(super.connections(dataSource), writer);
    }
}
