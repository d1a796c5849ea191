/// Decides whether the bytes of a file are CSV text at all, before anything is read from them.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "clinic/refusal.hpp"

namespace sparewell::exchange {

struct CsvText {
  std::string_view text;  ///< without the byte order mark; points into the bytes given
  bool byte_order_mark = false;
};

/// Refuses, in one sentence that begins with `file`: a workbook or other binary file, UTF-16, NUL
/// bytes, and bytes that are not UTF-8 (naming line and byte).
[[nodiscard]] Expected<CsvText> check_csv_text(std::string_view file, std::string_view bytes);

/// The bytes of a file. Refuses, naming the file, when it cannot be read.
[[nodiscard]] Expected<std::string> read_bytes(const std::filesystem::path& path);

}  // namespace sparewell::exchange
