/// The transactions of an X12 file, out of their envelopes.
#pragma once

#include <string>
#include <vector>

#include "exchange/x12/segments.hpp"

namespace sparewell::exchange {

struct X12Transaction {
  std::string kind;                  ///< ST01: "837" or "835"
  std::string control;               ///< ST02
  std::string implementation;        ///< ST03, else GS08: "005010X222A1"
  int segment = 0;                   ///< where it begins
  std::vector<X12Segment> segments;  ///< between ST and SE
};

/// What was found out on the way; the readers of transactions go on filling it. Every segment is
/// counted once: as read, or as unread.
struct X12Reading {
  int segments = 0;  ///< in the file
  int read = 0;      ///< understood, or known to hold nothing that is kept
  std::vector<Unread> unread;
  std::vector<std::string> differences;  ///< sums and counts that do not tie out
  std::vector<std::string> notes;

  void not_read(const X12Segment& segment, std::string reason);
  /// `words` without a full stop.
  void note(const X12Segment& segment, const std::string& words);
};

struct X12File {
  std::string name;
  std::vector<X12Transaction> transactions;
  X12Reading reading;
};

/// Takes ISA, GS, ST ... SE, GE, IEA apart, as often as they follow each other. Control numbers
/// and counts (SE01, GE01, IEA01) that do not fit, and ends that are missing, are noted; segments
/// outside a transaction are unread. Refuses what is no X12 file, see read_x12_segments.
[[nodiscard]] Expected<X12File> read_x12(const std::string& name, std::string bytes);

}  // namespace sparewell::exchange
