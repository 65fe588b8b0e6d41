package dev.stayfixed.platform.storage;

import dev.stayfixed.platform.Secret;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.Arrays;
import java.util.Base64;
import java.util.Optional;
import javax.crypto.AEADBadTagException;
import javax.crypto.Cipher;
import javax.crypto.spec.GCMParameterSpec;
import org.springframework.stereotype.Component;

/**
 * For secrets that the service has to use again: what is sealed can be read with a key that is not in the database, and only in the
 * place for which it was sealed (AES-256 in GCM). What only has to be recognised is kept as a digest instead.
 */
@Component
public class Seal {

    /** Before each sealed text; then the name of the key, a colon, and vector and ciphertext in base 64. */
    private static final String MARK = "sealed:1:";

    private static final int VECTOR_BYTES = 12;
    private static final int TAG_BITS = 128;

    private final SealKey key;
    private final String mine;

    Seal(SealSettings settings) {
        this.key = SealKey.of(settings);
        this.mine = MARK + key.name() + ":";
    }

    public static boolean isSealed(String text) {
        return text.startsWith(MARK);
    }

    /**
     * Seals a text.
     *
     * @param place where it will stand, such as a table and the key of its row
     */
    public String close(String text, String place) {
        byte[] vector = Secret.bytes(VECTOR_BYTES);
        byte[] sealed = crypt(Cipher.ENCRYPT_MODE, vector, text.getBytes(StandardCharsets.UTF_8), place)
                .orElseThrow(() -> new IllegalStateException("a text that could not be sealed"));
        return mine
                + Base64.getEncoder()
                        .encodeToString(ByteBuffer.allocate(vector.length + sealed.length)
                                .put(vector)
                                .put(sealed)
                                .array());
    }

    /** What was sealed; empty where that was done with another key, for another place, or was changed since. */
    public Optional<String> open(String sealed, String place) {
        if (!sealed.startsWith(mine)) {
            return Optional.empty();
        }
        byte[] bytes;
        try {
            bytes = Base64.getDecoder().decode(sealed.substring(mine.length()));
        } catch (IllegalArgumentException changed) {
            return Optional.empty();
        }
        if (bytes.length < VECTOR_BYTES) {
            return Optional.empty();
        }
        return crypt(
                        Cipher.DECRYPT_MODE,
                        Arrays.copyOf(bytes, VECTOR_BYTES),
                        Arrays.copyOfRange(bytes, VECTOR_BYTES, bytes.length),
                        place)
                .map(text -> new String(text, StandardCharsets.UTF_8));
    }

    private Optional<byte[]> crypt(int mode, byte[] vector, byte[] text, String place) {
        try {
            Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
            cipher.init(mode, key.key(), new GCMParameterSpec(TAG_BITS, vector));
            cipher.updateAAD(place.getBytes(StandardCharsets.UTF_8));
            return Optional.of(cipher.doFinal(text));
        } catch (AEADBadTagException changed) {
            return Optional.empty();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java runtime has AES in GCM", e);
        }
    }
}
