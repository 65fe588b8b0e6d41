package dev.stayfixed.platform;

import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.cfg.MultiTenancySettings;
import org.hibernate.context.spi.CurrentTenantIdentifierResolver;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.hibernate.autoconfigure.HibernatePropertiesCustomizer;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * The shop whose rows the work at hand reads and writes: each row belongs to one. Who begins work says for which shop it is, and there
 * is no shop that would be taken for granted: work that nobody put into one reads and writes nothing.
 */
@Component
public class CurrentShop implements CurrentTenantIdentifierResolver<UUID>, HibernatePropertiesCustomizer {

    /** The shop that a new database begins with. */
    public static final UUID DEFAULT = UUID.fromString("00000000-0000-4000-8000-000000000001");

    /** Belongs to no shop, so that no row is found in it, and none can be written. */
    public static final UUID NOWHERE = new UUID(0, 0);

    private static final ThreadLocal<UUID> SHOP = new ThreadLocal<>();

    /** What is done in a shop. */
    @FunctionalInterface
    public interface Work<T extends @Nullable Object, E extends Exception> {
        T run() throws E;
    }

    /**
     * The shop of the work at hand.
     *
     * @throws IllegalStateException where nobody said for which shop it is
     */
    public UUID id() {
        return ifAny().orElseThrow(() -> new IllegalStateException(
                "found work without a shop, expected it inside of CurrentShop.in: a request gets its shop in a filter, work in the"
                        + " background by Shops.each"));
    }

    public Optional<UUID> ifAny() {
        return Optional.ofNullable(SHOP.get());
    }

    /** Whether rows can be found and written at all. */
    public boolean isSomewhere() {
        return ifAny().filter(id -> !id.equals(NOWHERE)).isPresent();
    }

    /**
     * Does work in a shop; afterwards the thread is where it was before.
     *
     * @throws IllegalStateException in a transaction of another shop
     */
    public <T extends @Nullable Object, E extends Exception> T in(UUID id, Work<T, E> work) throws E {
        UUID before = SHOP.get();
        if (TransactionSynchronizationManager.isActualTransactionActive() && !id.equals(before)) {
            throw new IllegalStateException("found a running transaction of the shop " + before
                    + ", expected none where work begins in the shop " + id);
        }
        SHOP.set(id);
        try {
            return work.run();
        } finally {
            if (before == null) {
                SHOP.remove();
            } else {
                SHOP.set(before);
            }
        }
    }

    /** The same, of work that gives nothing. */
    public void in(UUID id, Runnable work) {
        in(id, () -> {
            work.run();
            return true;
        });
    }

    /** Nowhere, where there is no shop: so Hibernate can start, and read what a query asks. */
    @Override
    public UUID resolveCurrentTenantIdentifier() {
        return ifAny().orElse(NOWHERE);
    }

    @Override
    public boolean validateExistingCurrentSessions() {
        return false;
    }

    @Override
    public void customize(Map<String, Object> hibernateProperties) {
        hibernateProperties.put(MultiTenancySettings.MULTI_TENANT_IDENTIFIER_RESOLVER, this);
    }
}
