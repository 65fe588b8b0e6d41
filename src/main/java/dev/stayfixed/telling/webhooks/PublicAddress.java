package dev.stayfixed.telling.webhooks;

import java.math.BigInteger;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;

/** Whether an address is one that the whole internet can reach, by the special-purpose address registries of RFC 6890. */
final class PublicAddress {

    /** Not globally reachable, or none that a service stands on. */
    private static final List<Block> HIDDEN_4 = List.of(
            Block.of("0.0.0.0/8"),
            Block.of("10.0.0.0/8"),
            Block.of("100.64.0.0/10"),
            Block.of("127.0.0.0/8"),
            Block.of("169.254.0.0/16"),
            Block.of("172.16.0.0/12"),
            Block.of("192.0.0.0/24"),
            Block.of("192.0.2.0/24"),
            Block.of("192.88.99.0/24"),
            Block.of("192.168.0.0/16"),
            Block.of("198.18.0.0/15"),
            Block.of("198.51.100.0/24"),
            Block.of("203.0.113.0/24"),
            Block.of("224.0.0.0/3"));

    /** All global unicast so far, RFC 4291. */
    private static final Block GLOBAL_6 = Block.of("2000::/3");

    /** Of these, what wraps an address of version 4 (Teredo, 6to4), and what is for documentation or protocols. */
    private static final List<Block> HIDDEN_6 =
            List.of(Block.of("2001::/23"), Block.of("2001:db8::/32"), Block.of("2002::/16"), Block.of("3fff::/20"));

    private PublicAddress() {}

    static boolean is(InetAddress address) {
        return address instanceof Inet4Address
                ? HIDDEN_4.stream().noneMatch(block -> block.holds(address))
                : GLOBAL_6.holds(address) && HIDDEN_6.stream().noneMatch(block -> block.holds(address));
    }

    /** Addresses that begin alike. */
    private record Block(BigInteger prefix, int shift, int length) {

        static Block of(String text) {
            String[] parts = text.split("/", 2);
            try {
                byte[] bytes = InetAddress.getByName(parts[0]).getAddress();
                int shift = bytes.length * 8 - Integer.parseInt(parts[1]);
                return new Block(new BigInteger(1, bytes).shiftRight(shift), shift, bytes.length);
            } catch (UnknownHostException e) {
                throw new IllegalArgumentException(text, e);
            }
        }

        boolean holds(InetAddress address) {
            byte[] bytes = address.getAddress();
            return bytes.length == length
                    && new BigInteger(1, bytes).shiftRight(shift).equals(prefix);
        }
    }
}
