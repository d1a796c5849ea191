#include "desk/import/rejects_folder.hpp"

#include <fstream>
#include <system_error>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "exchange/csv_text.hpp"

namespace sparewell::desk {
namespace {

namespace fs = std::filesystem;

/// True when the folder holds these files and nothing else.
bool holds_exactly(const fs::path& folder, const std::map<std::string, std::string>& texts) {
  std::size_t count = 0;
  for (const auto& entry : fs::directory_iterator{folder}) {
    const auto text = texts.find(entry.path().filename().string());
    if (text == texts.end() || !entry.is_regular_file()) return false;
    const auto bytes = exchange::read_bytes(entry.path());
    if (!bytes || *bytes != text->second) return false;
    ++count;
  }
  return count == texts.size();
}

fs::path numbered(const fs::path& wanted, int number) {
  if (number == 1) return wanted;
  return wanted.parent_path() / fmt::format("{}-{}", wanted.filename().string(), number);
}

bool write_file(const fs::path& path, const std::string& text) {
  std::ofstream out{path, std::ios::binary};
  out << text;
  out.close();
  return !out.fail();
}

}  // namespace

Expected<fs::path> write_rejects_folder(const fs::path& wanted,
                                        const std::map<std::string, std::string>& texts) try {
  constexpr int most_folders = 10'000;
  for (int number = 1; number < most_folders; ++number) {
    const auto folder = numbered(wanted, number);
    if (fs::exists(folder)) {
      if (!fs::is_directory(folder)) continue;
      if (holds_exactly(folder, texts)) return folder;
      if (!fs::is_empty(folder)) continue;
    }
    fs::create_directories(folder);
    for (const auto& [name, text] : texts) {
      if (!write_file(folder / name, text)) {
        return refuse(say(
            "The refused rows could not be written to {}; make room there or name another folder.",
            (folder / name).string()));
      }
    }
    return folder;
  }
  return refuse(
      say("The refused rows were not written: {} and its numbered neighbours are "
          "taken; remove old ones.",
          wanted.string()));
} catch (const fs::filesystem_error& error) {
  return refuse(
      say("The refused rows could not be written to {} ({}); name a folder that can be written.",
          wanted.string(), error.code().message()));
}

}  // namespace sparewell::desk
