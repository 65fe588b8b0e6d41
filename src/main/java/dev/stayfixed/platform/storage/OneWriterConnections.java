package dev.stayfixed.platform.storage;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.atomic.AtomicBoolean;
import javax.sql.DataSource;
import org.springframework.jdbc.datasource.DelegatingDataSource;

/** Whoever holds one of these connections has the writer's turn, from the opening to the closing, which one thread does. */
final class OneWriterConnections extends DelegatingDataSource {

    private final OneWriter writer;

    OneWriterConnections(DataSource dataSource, OneWriter writer) {
        super(dataSource);
        this.writer = writer;
    }

    @Override
    public Connection getConnection() throws SQLException {
        writer.enter();
        try {
            return releasing(super.getConnection());
        } catch (SQLException | RuntimeException e) {
            writer.leave();
            throw e;
        }
    }

    private Connection releasing(Connection connection) {
        AtomicBoolean open = new AtomicBoolean(true);
        InvocationHandler handler = (proxy, method, arguments) -> {
            boolean closing = method.getName().equals("close") && open.getAndSet(false);
            try {
                return method.invoke(connection, arguments);
            } catch (InvocationTargetException e) {
                throw e.getTargetException();
            } finally {
                if (closing) {
                    writer.leave();
                }
            }
        };
        return (Connection)
                Proxy.newProxyInstance(getClass().getClassLoader(), new Class<?>[] {Connection.class}, handler);
    }
}
