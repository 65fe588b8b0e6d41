package dev.stayfixed.platform;

import java.lang.reflect.Method;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.InvocationInterceptor;
import org.junit.jupiter.api.extension.ReflectiveInvocationContext;

/** What a test asks of the service without a request is asked for the shop that a new database begins with. */
public final class InDefaultShop implements InvocationInterceptor {

    private static final CurrentShop SHOP = new CurrentShop();

    @Override
    public void interceptBeforeEachMethod(
            Invocation<@Nullable Void> invocation, ReflectiveInvocationContext<Method> method, ExtensionContext context)
            throws Throwable {
        inShop(invocation);
    }

    @Override
    public void interceptTestMethod(
            Invocation<@Nullable Void> invocation, ReflectiveInvocationContext<Method> method, ExtensionContext context)
            throws Throwable {
        inShop(invocation);
    }

    @Override
    public void interceptTestTemplateMethod(
            Invocation<@Nullable Void> invocation, ReflectiveInvocationContext<Method> method, ExtensionContext context)
            throws Throwable {
        inShop(invocation);
    }

    private static void inShop(Invocation<@Nullable Void> invocation) throws Throwable {
        AtomicReference<@Nullable Throwable> failed = new AtomicReference<>();
        SHOP.in(CurrentShop.DEFAULT, () -> {
            try {
                invocation.proceed();
            } catch (Throwable e) {
                failed.set(e);
            }
        });
        Throwable failure = failed.get();
        if (failure != null) {
            throw failure;
        }
    }
}
