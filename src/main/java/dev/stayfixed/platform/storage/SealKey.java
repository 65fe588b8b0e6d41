package dev.stayfixed.platform.storage;

import dev.stayfixed.platform.PrivateFiles;
import dev.stayfixed.platform.Secret;
import dev.stayfixed.platform.Sha256;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Base64;
import javax.crypto.SecretKey;
import javax.crypto.spec.SecretKeySpec;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The key of what is sealed.
 *
 * @param name tells keys apart and says nothing of the key
 */
record SealKey(SecretKey key, String name) {

    private static final Logger LOG = LoggerFactory.getLogger(SealKey.class);

    private static final int BYTES = 32;

    private static final String MAKE_ONE = "Make one: openssl rand -base64 32.";

    /** @throws NotDone when what is given is no key, or the file can be neither read nor made */
    static SealKey of(SealSettings settings) {
        String given = settings.secretKey();
        if (given != null && !given.isBlank()) {
            return of(given, "stayfixed.secret-key");
        }
        Path file = settings.secretKeyFile().toAbsolutePath().normalize();
        try {
            return of(inFile(file), "the key file " + file);
        } catch (IOException e) {
            throw new NotDone(
                    "the key file " + file + ": found " + e + ", expected a file that the service can read, or make",
                    "Let file and folder belong to the account of the service, name another one as stayfixed.secret-key-file, or give the"
                            + " key as stayfixed.secret-key.",
                    e);
        }
    }

    /** @param where it was found, for a person */
    private static SealKey of(String base64, String where) {
        byte[] bytes;
        try {
            bytes = Base64.getDecoder().decode(base64.strip());
        } catch (IllegalArgumentException e) {
            throw noKey(where, "something that is not base 64");
        }
        if (bytes.length != BYTES) {
            throw noKey(where, bytes.length + " bytes");
        }
        MessageDigest digest = Sha256.begin();
        digest.update("the name of a key of Stayfixed:".getBytes(StandardCharsets.US_ASCII));
        return new SealKey(
                new SecretKeySpec(bytes, "AES"), Sha256.hex(digest, bytes).substring(0, 8));
    }

    private static NotDone noKey(String where, String found) {
        return new NotDone(where + ": found " + found + ", expected 32 random bytes in base 64", MAKE_ONE);
    }

    private static String inFile(Path file) throws IOException {
        if (!Files.exists(file)) {
            make(file);
        }
        PrivateFiles.narrow(file);
        return Files.readString(file, StandardCharsets.US_ASCII);
    }

    /** It has its name when it is on the disk; where two instances make it at once, that of the first stays. */
    private static void make(Path file) throws IOException {
        Path folder = PrivateFiles.folderOf(file);
        Path begun = Files.createTempFile(folder, file.getFileName().toString(), ".part");
        try {
            Files.writeString(begun, Base64.getEncoder().encodeToString(Secret.bytes(BYTES)) + "\n");
            BackupFolder.sync(begun);
            Files.createLink(file, begun);
            LOG.info(
                    "made the key file {}. Keep a copy of it apart from the backups: without it the secrets of webhooks have to be made"
                            + " anew",
                    file);
        } catch (FileAlreadyExistsException another) {
            LOG.debug("another instance made the key file {}", file);
        } catch (UnsupportedOperationException noLinks) {
            Files.move(begun, file);
        } finally {
            Files.deleteIfExists(begun);
        }
    }

    @Override
    public String toString() {
        return "key " + name;
    }
}
