/*
 * Plays a disk that is full or refuses. Loaded before the C library (LD_PRELOAD, Linux): calls that write to a file under
 * $LIGHTOFF_FAIL_FOLDER fail as the orders say. The orders are four numbers in the file $LIGHTOFF_FAIL_ORDERS, read as they
 * stand at each call: the error (0: none), how many calls succeed before it, whether it strikes once, how often it has struck.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <pthread.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/types.h>
#include <sys/uio.h>
#include <unistd.h>

enum { ERROR, LEFT, ONCE, STRUCK };

static pthread_mutex_t lock = PTHREAD_MUTEX_INITIALIZER;
static volatile int32_t *orders = NULL;

static int has_orders(void) {
  if (orders != NULL) return 1;
  const char *path = getenv("LIGHTOFF_FAIL_ORDERS");
  if (path == NULL) return 0;
  int fd = open(path, O_RDWR);
  if (fd < 0) return 0;
  void *at = mmap(NULL, 4 * sizeof(int32_t), PROT_READ | PROT_WRITE, MAP_SHARED, fd, 0);
  close(fd);
  if (at == MAP_FAILED) return 0;
  orders = at;
  return 1;
}

static int is_watched(int fd) {
  const char *folder = getenv("LIGHTOFF_FAIL_FOLDER");
  char link[64], path[PATH_MAX];
  snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  ssize_t length = readlink(link, path, sizeof path - 1);
  if (folder == NULL || length <= 0) return 0;
  path[length] = '\0';
  size_t prefix = strlen(folder);
  return strncmp(path, folder, prefix) == 0 && (path[prefix] == '/' || path[prefix] == '\0');
}

/* Whether this call is to fail; errno is set then. */
static int fails(int fd) {
  int kept = errno, failed = 0;
  pthread_mutex_lock(&lock);
  if (has_orders() && orders[ERROR] != 0 && is_watched(fd)) {
    if (orders[LEFT] > 0) orders[LEFT]--;
    else if (!orders[ONCE] || orders[STRUCK] == 0) {
      orders[STRUCK]++;
      kept = orders[ERROR];
      failed = 1;
    }
  }
  pthread_mutex_unlock(&lock);
  errno = kept;
  return failed;
}

#define REAL(name) ((__typeof__(&name))dlsym(RTLD_NEXT, #name))

ssize_t write(int fd, const void *bytes, size_t count) { return fails(fd) ? -1 : REAL(write)(fd, bytes, count); }
ssize_t pwrite(int fd, const void *bytes, size_t count, off_t at) { return fails(fd) ? -1 : REAL(pwrite)(fd, bytes, count, at); }
ssize_t pwrite64(int fd, const void *bytes, size_t count, off64_t at) { return fails(fd) ? -1 : REAL(pwrite64)(fd, bytes, count, at); }
ssize_t writev(int fd, const struct iovec *parts, int count) { return fails(fd) ? -1 : REAL(writev)(fd, parts, count); }
int fsync(int fd) { return fails(fd) ? -1 : REAL(fsync)(fd); }
int fdatasync(int fd) { return fails(fd) ? -1 : REAL(fdatasync)(fd); }
int ftruncate(int fd, off_t length) { return fails(fd) ? -1 : REAL(ftruncate)(fd, length); }
int ftruncate64(int fd, off64_t length) { return fails(fd) ? -1 : REAL(ftruncate64)(fd, length); }
