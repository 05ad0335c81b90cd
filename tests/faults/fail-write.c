/*
 * Makes the n-th write to a build file fail, in the manner of SQLite's own tests. Loaded before the C library
 * (LD_PRELOAD); counts every call that changes a file whose name holds ".wayw": writing, cutting, syncing.
 *
 *   FAIL_AT   number of the call that fails, from 1
 *   FAIL_HOW  eio, enospc: that call alone; full: that call and all later ones; short: half is written, then ENOSPC;
 *             die: the process ends there; torn: half is written and the process ends there
 *   FAIL_LOG  file that is created when the call was reached
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <unistd.h>

static int calls = 0;

static int is_build(int fd) {
  char link[64], name[4096];
  snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  ssize_t length = readlink(link, name, sizeof name - 1);
  if (length < 0) return 0;
  name[length] = 0;
  return strstr(name, ".wayw") != NULL;
}

/* 0: go on; 1: fail with errno set; 2: do half of it, then fail; 3: do half of it, then die. */
static int verdict(int fd) {
  const char *at = getenv("FAIL_AT"), *how = getenv("FAIL_HOW"), *log = getenv("FAIL_LOG");
  if (!at || !how || !is_build(fd)) return 0;
  int call = __sync_add_and_fetch(&calls, 1);
  int wanted = atoi(at);
  if (call != wanted && !(call > wanted && strcmp(how, "full") == 0)) return 0;
  if (log) close(open(log, O_CREAT | O_WRONLY, 0644));
  if (strcmp(how, "die") == 0) _exit(99);
  errno = strcmp(how, "eio") == 0 ? EIO : ENOSPC;
  if (strcmp(how, "short") == 0) return 2;
  if (strcmp(how, "torn") == 0) return 3;
  return 1;
}

static ssize_t write_at(const char *real_name, int fd, const void *bytes, size_t count, off_t offset) {
  ssize_t (*real)(int, const void *, size_t, off_t) = dlsym(RTLD_NEXT, real_name);
  int found = verdict(fd);
  if (found == 0) return real(fd, bytes, count, offset);
  if (found == 1) return -1;
  real(fd, bytes, count / 2, offset);
  if (found == 3) _exit(99);
  errno = ENOSPC;
  return -1;
}

ssize_t pwrite64(int fd, const void *bytes, size_t count, off_t offset) {
  return write_at("pwrite64", fd, bytes, count, offset);
}

ssize_t pwrite(int fd, const void *bytes, size_t count, off_t offset) {
  return write_at("pwrite", fd, bytes, count, offset);
}

ssize_t write(int fd, const void *bytes, size_t count) {
  ssize_t (*real)(int, const void *, size_t) = dlsym(RTLD_NEXT, "write");
  int found = verdict(fd);
  if (found == 0) return real(fd, bytes, count);
  if (found == 1) return -1;
  real(fd, bytes, count / 2);
  if (found == 3) _exit(99);
  errno = ENOSPC;
  return -1;
}

#define ONE_ARGUMENT(name)                          \
  int name(int fd) {                                \
    int (*real)(int) = dlsym(RTLD_NEXT, #name);     \
    int found = verdict(fd);                        \
    if (found == 0) return real(fd);                \
    if (found == 3) _exit(99);                      \
    return -1;                                      \
  }
ONE_ARGUMENT(fsync)
ONE_ARGUMENT(fdatasync)

#define CUT(name)                                              \
  int name(int fd, off_t length) {                             \
    int (*real)(int, off_t) = dlsym(RTLD_NEXT, #name);         \
    int found = verdict(fd);                                   \
    if (found == 0) return real(fd, length);                   \
    if (found == 3) _exit(99);                                 \
    return -1;                                                 \
  }
CUT(ftruncate)
CUT(ftruncate64)
