#include "store/sqlite/file_check.hpp"

#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>

#include <fcntl.h>
#include <sys/stat.h>
#include <sys/vfs.h>
#include <unistd.h>

#include "clinic/say.hpp"
#include "store/sqlite/connection.hpp"

namespace sparewell::store::sqlite {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view magic{"SQLite format 3\0", 16};
constexpr std::size_t header_size = 100;
// Places of big-endian numbers in the header: sqlite.org/fileformat.html, section 1.3.
constexpr std::size_t page_size_at = 16;
constexpr std::size_t change_counter_at = 24;
constexpr std::size_t page_count_at = 28;
constexpr std::size_t user_version_at = 60;
constexpr std::size_t application_id_at = 68;
constexpr std::size_t page_count_valid_for_at = 92;

using Header = std::array<char, header_size>;

std::uint32_t big_endian(const Header& header, std::size_t at) {
  std::uint32_t value = 0;
  for (std::size_t i = at; i < at + 4; ++i) value = (value << 8) | std::uint8_t(header[i]);
  return value;
}

void check_writable(const std::string& path) {
  const int file = ::open(path.c_str(), O_RDWR | O_CLOEXEC);
  if (file >= 0) {
    ::close(file);
    return;
  }
  if (errno == EACCES || errno == EROFS || errno == EPERM) {
    throw StoreFailure{StoreError::read_only,
                       say("You may not write to {}; ask who looks after the file for the "
                           "right to, or open a copy of it.",
                           path)};
  }
  throw StoreFailure{StoreError::cannot_open,
                     say("{} cannot be opened: {}.", path, std::strerror(errno))};
}

void check_folder_writable(const std::string& path) {
  const auto folder = fs::absolute(path).parent_path();
  if (::faccessat(AT_FDCWD, folder.c_str(), W_OK | X_OK, AT_EACCESS) == 0) return;
  throw StoreFailure{StoreError::read_only,
                     say("You may not write to the folder {}, where the clinic file keeps "
                         "its log; ask for the right to, or use another folder.",
                         folder.string())};
}

bool has_log(const std::string& path) {
  std::error_code ignored;
  const auto size = fs::file_size(path + "-wal", ignored);
  return !ignored && size > 0;
}

/// SQLite reads the missing end of a last page as zeros, without a word.
void check_length(const std::string& path, const Header& header) {
  if (has_log(path)) return;  // the log may hold pages that the file lacks
  if (big_endian(header, change_counter_at) != big_endian(header, page_count_valid_for_at)) return;
  const std::uint64_t stored = big_endian(header, page_size_at) >> 16;
  const std::uint64_t page_size = stored == 1 ? 65536 : stored;
  if (fs::file_size(path) < page_size * big_endian(header, page_count_at)) {
    throw StoreFailure{StoreError::corrupt, say("{} is cut off; restore the last backup.", path)};
  }
}

void check_header(const std::string& path, const Header& header, int our_version) {
  const auto id = big_endian(header, application_id_at);
  // A fresh file may have its number in the log beside it; it is looked at again when open.
  if (id != static_cast<std::uint32_t>(application_id) && !(id == 0 && has_log(path))) {
    throw StoreFailure{StoreError::not_a_clinic,
                       say("{} is a database of another program, not a Sparewell clinic "
                           "file; nothing was changed in it.",
                           path)};
  }
  check_version(big_endian(header, user_version_at), our_version);
  check_length(path, header);
}

}  // namespace

FileState look_at(const std::string& path, int our_version) {
  std::error_code ignored;
  const auto status = fs::status(path, ignored);
  if (status.type() == fs::file_type::not_found) return FileState::missing;
  if (status.type() == fs::file_type::directory) {
    throw StoreFailure{StoreError::cannot_open,
                       say("{} is a folder; name the clinic file inside it.", path)};
  }
  if (status.type() == fs::file_type::regular && fs::file_size(path, ignored) == 0) {
    return FileState::empty;
  }
  Header header{};
  std::ifstream file;
  if (status.type() == fs::file_type::regular) file.open(path, std::ios::binary);
  if (status.type() == fs::file_type::regular && !file) check_writable(path);
  file.read(header.data(), header_size);
  const auto length = static_cast<std::size_t>(file.gcount());
  if (std::string_view{header.data(), std::min(length, magic.size())} != magic) {
    throw StoreFailure{StoreError::not_a_clinic,
                       say("{} is not a Sparewell clinic file; nothing was changed in it.", path)};
  }
  if (length < header_size) {
    throw StoreFailure{StoreError::corrupt, say("{} is cut off; restore the last backup.", path)};
  }
  check_header(path, header, our_version);
  check_writable(path);
  check_folder_writable(path);
  return FileState::clinic_file;
}

void make_empty_file(const std::string& path) {
  check_folder_writable(path);
  const int file = ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0660);
  if (file >= 0) {
    ::close(file);
  } else {
    check_writable(path);
  }
}

std::string_view network_file_system(long statfs_type) {
  // Numbers from statfs(2).
  switch (static_cast<std::uint32_t>(statfs_type)) {
    case 0x6969:
      return "NFS";
    case 0x517B:
    case 0xFE534D42:
      return "SMB";
    case 0xFF534D42:
      return "CIFS";
    case 0x564C:
      return "NCP";
    case 0x5346414F:
      return "AFS";
    case 0x73757245:
      return "Coda";
    default:
      return "";
  }
}

void check_folder(const std::string& path) {
  const auto folder = fs::absolute(path).parent_path();
  struct statfs about {};
  if (::statfs(folder.c_str(), &about) != 0) {
    throw StoreFailure{StoreError::cannot_open, say("The folder {} cannot be used: {}.",
                                                    folder.string(), std::strerror(errno))};
  }
  if (const auto kind = network_file_system(static_cast<long>(about.f_type)); !kind.empty()) {
    throw StoreFailure{StoreError::cannot_open,
                       say("{} is on a network drive ({}), where a clinic file can be "
                           "damaged; move it to a disk of this computer.",
                           path, kind)};
  }
}

void check_version(std::int64_t version, int our_version) {
  if (version <= our_version) return;
  throw StoreFailure{StoreError::schema_too_new,
                     say("The clinic file was written by a newer Sparewell (form {}, this "
                         "program knows up to {}); nothing was changed, install the newer "
                         "program.",
                         version, our_version)};
}

}  // namespace sparewell::store::sqlite
