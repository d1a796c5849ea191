/// Runs the real sparewell-batch in a folder of its own and gives back what it printed.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

struct Ran {
  int status = 0;
  std::string out;
  std::string errors;

  [[nodiscard]] nlohmann::json json() const { return nlohmann::json::parse(out); }
};

/// A folder that is empty at first and removed at the end.
class ScratchFolder {
 public:
  ScratchFolder();
  ~ScratchFolder();
  ScratchFolder(const ScratchFolder&) = delete;
  ScratchFolder& operator=(const ScratchFolder&) = delete;
  [[nodiscard]] std::filesystem::path operator/(const std::string& name) const {
    return path_ / name;
  }

 private:
  std::filesystem::path path_;
};

[[nodiscard]] Ran run_batch(const std::vector<std::string>& arguments);

void write_file(const std::filesystem::path& file, const std::string& text);
[[nodiscard]] std::string read_file(const std::filesystem::path& file);
