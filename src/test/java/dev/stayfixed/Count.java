package dev.stayfixed;

/**
 * How many seeded cars, inputs or repetitions a test takes: few at the desk, more where CI=true, and any other number by a system
 * property ({@code -Dstayfixed.fleet=2000}).
 */
public final class Count {

    private Count() {}

    /**
     * How many, here and now.
     *
     * @param property names the number where somebody asks for another one
     */
    public static int of(String property, int atTheDesk, int whereCiIsTrue) {
        return Integer.getInteger(property, "true".equals(System.getenv("CI")) ? whereCiIsTrue : atTheDesk);
    }
}
