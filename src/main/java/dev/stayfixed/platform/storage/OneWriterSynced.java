package dev.stayfixed.platform.storage;

import java.util.function.Supplier;
import javax.sql.DataSource;
import org.springframework.dao.DataAccessException;
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

    private final Runnable reopen;

    /**
     * Nobody writes yet.
     *
     * @param sync forces the database file to the disk
     * @param reopen drops all connections: after a failed write H2 has closed the file, and opens it again for the next one
     */
    OneWriterSynced(PlatformTransactionManager manager, JdbcClient jdbc, Runnable sync, Runnable reopen) {
        super(manager, jdbc);
        this.reopen = reopen;
        this.writer = new OneWriter(sync, SHARE_A_SYNC);
    }

    @Override
    public <T> T write(Supplier<T> work) {
        if (writer.isMe()) {
            return super.write(work);
        }
        try {
            return writer.write(() -> super.write(work));
        } catch (DataAccessException failedSync) {
            throw explained(failedSync);
        }
    }

    @Override
    public void derive(Runnable work) {
        writer.enter();
        try {
            write(work);
        } finally {
            writer.leave();
        }
    }

    @Override
    RuntimeException explained(RuntimeException failure) {
        RuntimeException explained = super.explained(failure);
        if (explained != failure) {
            reopen.run();
        }
        return explained;
    }

    /** There are no fences here but those of the statements. */
    @Override
    public <T> T readThrough(String door, Supplier<T> work) {
        return read(work);
    }

    /** Who writes is alone. */
    @Override
    public void hold(String name) {}

    @Override
    public void share(String name) {}

    @Override
    public boolean holdIfFree(String name) {
        return true;
    }

    @Override
    public DataSource connections(DataSource dataSource) {
        return new OneWriterConnections(super.connections(dataSource), writer);
    }
}
