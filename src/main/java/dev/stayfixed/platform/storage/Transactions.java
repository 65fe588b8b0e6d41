package dev.stayfixed.platform.storage;

import java.util.function.Supplier;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/** Plain transactions: enough where a commit is durable once it returns, as on PostgreSQL with synchronous_commit on. */
class Transactions implements Durably {

    private final TransactionTemplate writing;
    private final TransactionTemplate reading;

    Transactions(PlatformTransactionManager manager) {
        writing = new TransactionTemplate(manager);
        reading = new TransactionTemplate(manager);
        reading.setReadOnly(true);
    }

    @Override
    public <T> T write(Supplier<T> work) {
        return present(writing.execute(status -> {
            T result = work.get();
            status.flush();
            return result;
        }));
    }

    @Override
    public <T> T read(Supplier<T> work) {
        return present(reading.execute(status -> work.get()));
    }

    private static <T> T present(@org.jspecify.annotations.Nullable T result) {
        if (result == null) {
            throw new IllegalStateException("a transaction must return something");
        }
        return result;
    }
}
