package dev.stayfixed.platform.storage;

import dev.stayfixed.platform.CurrentShop;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.UUID;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.datasource.DelegatingDataSource;

/**
 * Connections that see the rows of the shop at work, and no others: the second fence, behind that of the statements. Each is told at its
 * hand-out whose it is, also that it is nobody's, so what it was told before does not matter. Until the fences stand, as for the
 * migrations, it is told nothing.
 */
final class ShopConnections extends DelegatingDataSource {

    private final CurrentShop shop;
    private volatile @Nullable String telling;

    ShopConnections(DataSource dataSource, CurrentShop shop) {
        super(dataSource);
        this.shop = shop;
    }

    /** From now on. */
    void fence(RowFences.Bound bound) {
        String whose = "select set_config('" + RowFences.SHOP + "', ?, false)";
        telling = bound == RowFences.Bound.BY_ROLE
                ? whose + ", set_config('role', '" + RowFences.ROLE + "', false)"
                : whose;
    }

    @Override
    public Connection getConnection() throws SQLException {
        Connection connection = super.getConnection();
        String told = telling;
        if (told == null) {
            return connection;
        }
        try (PreparedStatement tell = connection.prepareStatement(told)) {
            tell.setString(1, shop.ifAny().map(UUID::toString).orElse(""));
            tell.execute();
            return connection;
        } catch (SQLException | RuntimeException e) {
            connection.close();
            throw e;
        }
    }
}
