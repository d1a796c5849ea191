#include "exchange/sheet/zip_parts.hpp"

#include <array>
#include <new>

#include "clinic/say.hpp"

namespace sparewell::exchange {
namespace {

struct CloseFile {
  void operator()(zip_file_t* file) const { zip_fclose(file); }
};

tl::unexpected<Refusal> damaged_archive(const std::string& name) {
  return refuse(say(
      "{} is damaged or no workbook; open it in a spreadsheet program and save it as .xlsx anew.",
      name));
}

}  // namespace

Expected<ZipParts> ZipParts::open(const std::string& name, const std::string& bytes,
                                  std::size_t part_bytes) {
  constexpr zip_int64_t most_entries = 10'000;
  zip_source_t* source = zip_source_buffer_create(bytes.data(), bytes.size(), 0, nullptr);
  if (source == nullptr) throw std::bad_alloc{};
  ZipParts made;
  made.name_ = name;
  made.part_bytes_ = part_bytes;
  made.archive_.reset(zip_open_from_source(source, ZIP_RDONLY, nullptr));
  if (!made.archive_) {
    zip_source_free(source);
    return damaged_archive(name);
  }
  if (zip_get_num_entries(made.archive_.get(), 0) > most_entries) {
    return refuse(say("{} holds too many parts for a workbook; it was not read.", name));
  }
  return made;
}

Expected<std::optional<std::string>> ZipParts::read(const std::string& part) const {
  const zip_int64_t at = zip_name_locate(archive_.get(), part.c_str(), ZIP_FL_NOCASE);
  if (at < 0) return std::optional<std::string>{};
  const auto index = static_cast<zip_uint64_t>(at);
  zip_stat_t about{};
  if (zip_stat_index(archive_.get(), index, 0, &about) == 0 &&
      (about.valid & ZIP_STAT_ENCRYPTION_METHOD) != 0 && about.encryption_method != ZIP_EM_NONE) {
    return refuse(say("{} is protected by a password; save it without one and try again.", name_));
  }
  const std::unique_ptr<zip_file_t, CloseFile> file{zip_fopen_index(archive_.get(), index, 0)};
  if (!file) return damaged_archive(name_);
  std::string text;
  std::array<char, 65536> piece{};
  zip_int64_t got = 0;
  // The size that the file states is not believed.
  while ((got = zip_fread(file.get(), piece.data(), piece.size())) > 0) {
    text.append(piece.data(), static_cast<std::size_t>(got));
    if (text.size() > part_bytes_) {
      return refuse(
          say("{} unfolds to more than {} MiB; it was not read.", name_, part_bytes_ >> 20U));
    }
  }
  if (got < 0) return damaged_archive(name_);
  return std::optional<std::string>{std::move(text)};
}

}  // namespace sparewell::exchange
