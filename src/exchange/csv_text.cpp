#include "exchange/csv_text.hpp"

#include <algorithm>
#include <fstream>
#include <iterator>

#include <utf8.h>

#include "clinic/say.hpp"

namespace sparewell::exchange {
namespace {

constexpr std::string_view utf8_mark = "\xEF\xBB\xBF";
constexpr const char* save_as = to_say("save it as CSV UTF-8 and import again");

bool looks_like_utf16(std::string_view bytes) {
  using namespace std::string_view_literals;
  if (bytes.starts_with("\xFF\xFE"sv) || bytes.starts_with("\xFE\xFF"sv)) return true;
  // Western text in UTF-16 without a mark: every other byte is NUL.
  return bytes.size() >= 4 && ((bytes[0] == '\0' && bytes[2] == '\0' && bytes[1] != '\0') ||
                               (bytes[1] == '\0' && bytes[3] == '\0' && bytes[0] != '\0'));
}

/// The line that the byte at `offset` is on; 1 is the first. CRLF, LF and CR end a line.
std::ptrdiff_t line_of(std::string_view bytes, std::size_t offset) {
  std::ptrdiff_t line = 1;
  for (std::size_t at = 0; at < offset; ++at) {
    const bool lone_return = bytes[at] == '\r' && (at + 1 >= bytes.size() || bytes[at + 1] != '\n');
    if (bytes[at] == '\n' || lone_return) ++line;
  }
  return line;
}

}  // namespace

Expected<CsvText> check_csv_text(std::string_view file, std::string_view bytes) {
  using namespace std::string_view_literals;
  if (bytes.starts_with("PK\x03\x04"sv) || bytes.starts_with("\xD0\xCF\x11\xE0"sv)) {
    return refuse(say("{} is a workbook, not CSV text; open it and {}.", file, said(save_as)));
  }
  if (looks_like_utf16(bytes)) {
    return refuse(say("{} is UTF-16 text, not UTF-8; {}.", file, said(save_as)));
  }
  if (const auto nul = bytes.find('\0'); nul != std::string_view::npos) {
    return refuse(
        say("{} holds a NUL byte in line {} (byte {} of the file), so it is a binary or "
            "damaged file; {}.",
            file, line_of(bytes, nul), nul + 1, said(save_as)));
  }
  const auto wrong = static_cast<std::size_t>(
      std::distance(bytes.begin(), utf8::find_invalid(bytes.begin(), bytes.end())));
  if (wrong < bytes.size()) {
    return refuse(say(
        "{} is not UTF-8 text: line {} holds the byte 0x{:02X} (byte {} of the file); {}.", file,
        line_of(bytes, wrong), static_cast<unsigned char>(bytes[wrong]), wrong + 1, said(save_as)));
  }
  CsvText made{bytes, bytes.starts_with(utf8_mark)};
  if (made.byte_order_mark) made.text.remove_prefix(utf8_mark.size());
  return made;
}

Expected<std::string> read_bytes(const std::filesystem::path& path) {
  std::ifstream in{path, std::ios::binary};
  std::string bytes{std::istreambuf_iterator<char>{in}, std::istreambuf_iterator<char>{}};
  if (!in.is_open() || in.bad()) {
    return refuse(say("{} cannot be read; check that it is there and that you may open it.",
                      path.filename().string()));
  }
  return bytes;
}

}  // namespace sparewell::exchange
