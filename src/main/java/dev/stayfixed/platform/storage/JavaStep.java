package dev.stayfixed.platform.storage;

import java.sql.Connection;
import java.sql.SQLException;
import org.flywaydb.core.api.MigrationVersion;
import org.flywaydb.core.api.migration.Context;
import org.flywaydb.core.api.migration.JavaMigration;
import org.jspecify.annotations.Nullable;

/** A migration that no SQL can do. It runs once, in its place among the scripts, in one transaction; a room has it as a bean. */
public abstract class JavaStep implements JavaMigration {

    private final String version;
    private final String description;

    /**
     * A step.
     *
     * @param version its number among the scripts
     * @param description as their names have it
     */
    protected JavaStep(String version, String description) {
        this.version = version;
        this.description = description;
    }

    /** Changes rows on the connection of the migrations. */
    protected abstract void on(Connection connection) throws SQLException;

    @Override
    public final void migrate(Context context) throws SQLException {
        on(context.getConnection());
    }

    @Override
    public MigrationVersion getVersion() {
        return MigrationVersion.fromVersion(version);
    }

    @Override
    public String getDescription() {
        return description;
    }

    @Override
    public @Nullable Integer getChecksum() {
        return null;
    }

    @Override
    public boolean canExecuteInTransaction() {
        return true;
    }
}
