/// Takes the text of an X12 file apart into segments and elements.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "clinic/refusal.hpp"

namespace sparewell::exchange {

/// What separates the parts of an interchange; it is read from its first segment.
struct X12Delimiters {
  char element = '*';
  char repetition = '^';  ///< ISA11; a letter or digit in files before version 00402: none
  char component = ':';   ///< ISA16
  char segment = '~';
};

struct X12Segment {
  int number = 0;                     ///< 1 is the first of the file
  std::vector<std::string> elements;  ///< the first is the identifier; without spaces around them
  char component = ':';

  [[nodiscard]] const std::string& id() const { return at(0); }
  /// The element of this number, as in "CLP02"; "" behind the last.
  [[nodiscard]] const std::string& at(std::size_t element) const;
  /// A part of a composite element counted from 1, as in "SVC01-2"; "" where there is none.
  [[nodiscard]] std::string part(std::size_t element, std::size_t which) const;
};

/// A segment that was not understood, as far as it may be shown.
struct Unread {
  int segment = 0;
  std::string text;    ///< an excerpt: of segments about persons the identifier alone
  std::string reason;  ///< what is wrong
};

struct X12Segments {
  std::vector<X12Segment> segments;
  std::vector<std::string> notes;
};

/// What the text of a file begins with, behind spaces and a byte order mark.
[[nodiscard]] bool looks_like_x12(std::string_view bytes);

/// Refuses in one sentence that begins with `name` what does not begin with a whole ISA segment.
/// Line breaks and spaces behind a segment are tolerated, and so is an ISA segment whose fields do
/// not have their fixed widths (noted). A further ISA segment may change the delimiters. Text that
/// is not UTF-8 is read as ISO 8859-1 (noted).
[[nodiscard]] Expected<X12Segments> read_x12_segments(const std::string& name, std::string bytes);

/// At most 40 bytes of a segment for a sentence: of those that hold codes, dates and amounts, as
/// far as their elements are codes; of all others the identifier. Names of persons never stand in
/// it.
[[nodiscard]] std::string shown_text(const X12Segment& segment);

}  // namespace sparewell::exchange
