package dev.stayfixed.platform;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import org.h2.store.fs.FileBase;
import org.h2.store.fs.FilePath;
import org.h2.store.fs.FilePathWrapper;

/** A file system of H2 on the real one. While it is full, each write fails as the operating system fails it. */
public final class FullDisk extends FilePathWrapper {

    private static volatile boolean full;

    /** An address whose files are on this disk. */
    public static String url(String file) {
        FilePath.register(new FullDisk());
        return "jdbc:h2:full:" + file + ";WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE;MODE=PostgreSQL";
    }

    public static void full(boolean isFull) {
        full = isFull;
    }

    @Override
    public String getScheme() {
        return "full";
    }

    @Override
    public FileChannel open(String mode) throws IOException {
        return new File(super.open(mode));
    }

    private static final class File extends FileBase {

        private final FileChannel file;

        File(FileChannel file) {
            this.file = file;
        }

        private static void needSpace() throws IOException {
            if (full) {
                throw new IOException("No space left on device");
            }
        }

        @Override
        public int write(ByteBuffer source) throws IOException {
            needSpace();
            return file.write(source);
        }

        @Override
        public synchronized int write(ByteBuffer source, long position) throws IOException {
            needSpace();
            return file.write(source, position);
        }

        @Override
        public int read(ByteBuffer target) throws IOException {
            return file.read(target);
        }

        @Override
        public synchronized int read(ByteBuffer target, long position) throws IOException {
            return file.read(target, position);
        }

        @Override
        public long position() throws IOException {
            return file.position();
        }

        @Override
        public FileChannel position(long position) throws IOException {
            file.position(position);
            return this;
        }

        @Override
        public long size() throws IOException {
            return file.size();
        }

        @Override
        public FileChannel truncate(long size) throws IOException {
            file.truncate(size);
            return this;
        }

        @Override
        public void force(boolean metaData) throws IOException {
            file.force(metaData);
        }

        @Override
        public FileLock tryLock(long position, long size, boolean shared) throws IOException {
            return file.tryLock(position, size, shared);
        }

        @Override
        protected void implCloseChannel() throws IOException {
            file.close();
        }
    }
}
