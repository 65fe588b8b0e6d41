package dev.stayfixed.bench;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.atomic.AtomicInteger;
import javax.sql.DataSource;
import org.springframework.jdbc.datasource.DelegatingDataSource;

/** Counts the statements that are prepared, whoever does it. */
final class CountedStatements extends DelegatingDataSource {

    private final AtomicInteger count;

    CountedStatements(DataSource source, AtomicInteger count) {
        super(source);
        this.count = count;
    }

    @Override
    public Connection getConnection() throws SQLException {
        Connection connection = super.getConnection();
        return (Connection) Proxy.newProxyInstance(
                getClass().getClassLoader(), new Class<?>[] {Connection.class}, (proxy, method, arguments) -> {
                    if (method.getName().equals("prepareStatement")
                            || method.getName().equals("createStatement")) {
                        count.incrementAndGet();
                    }
                    try {
                        return method.invoke(connection, arguments);
                    } catch (InvocationTargetException e) {
                        throw e.getTargetException();
                    }
                });
    }
}
