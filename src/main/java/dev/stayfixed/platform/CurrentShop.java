package dev.stayfixed.platform;

import java.util.Map;
import java.util.UUID;
import org.hibernate.cfg.MultiTenancySettings;
import org.hibernate.context.spi.CurrentTenantIdentifierResolver;
import org.springframework.boot.hibernate.autoconfigure.HibernatePropertiesCustomizer;
import org.springframework.stereotype.Component;

/** The shop whose rows are read and written. There is one so far; every row carries it, so that rights can come later. */
@Component
public class CurrentShop implements CurrentTenantIdentifierResolver<UUID>, HibernatePropertiesCustomizer {

    /** The shop that a new database begins with. */
    public static final UUID DEFAULT = UUID.fromString("00000000-0000-4000-8000-000000000001");

    public UUID id() {
        return DEFAULT;
    }

    @Override
    public UUID resolveCurrentTenantIdentifier() {
        return id();
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
