#include "exchange/x12/transactions.hpp"

#include <array>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "exchange/text.hpp"

namespace sparewell::exchange {
namespace {

/// One level of the envelope: its segments, and where its control number and counts stand (from
/// memory, confirmed by public samples).
struct Level {
  const char* begin;
  const char* end;
  std::size_t begin_control;
  const char* counts;  ///< what the first element of the end counts
};
constexpr std::array<Level, 3> levels{{{"ISA", "IEA", 13, to_say("functional groups")},
                                       {"GS", "GE", 6, to_say("transactions")},
                                       {"ST", "SE", 2, to_say("segments")}}};
constexpr std::size_t transaction_level = 2;

std::string_view without_zeros(std::string_view number) {
  while (number.size() > 1 && number.front() == '0') number.remove_prefix(1);
  return number;
}

class Envelopes {
 public:
  explicit Envelopes(X12File& file) : file_{file} {}

  void take(X12Segment segment) {
    for (std::size_t level = 0; level < levels.size(); ++level) {
      if (segment.id() == levels[level].begin) return begin(level, segment);
      if (segment.id() == levels[level].end) return end(level, segment);
    }
    if (open_[transaction_level].is_open) {
      ++open_[transaction_level].count;
      file_.transactions.back().segments.push_back(std::move(segment));
    } else if (segment.id() == "TA1") {
      ++file_.reading.read;  // the receipt of another interchange
    } else {
      file_.reading.not_read(segment, said("stands outside a transaction"));
    }
  }
  /// To be called after the last segment.
  void finish() { close_from(0, 0); }

 private:
  struct Open {
    bool is_open = false;
    std::string control;
    int count = 0;
  };

  void begin(std::size_t level, const X12Segment& segment) {
    close_from(level, segment.number);
    if (level > 0) ++open_[level - 1].count;
    open_[level] = {true, segment.at(levels[level].begin_control), 0};
    ++file_.reading.read;
    if (segment.id() == "GS") group_implementation_ = segment.at(8);
    if (level != transaction_level) return;
    open_[level].count = 1;
    file_.transactions.push_back({segment.at(1),
                                  segment.at(2),
                                  segment.at(3).empty() ? group_implementation_ : segment.at(3),
                                  segment.number,
                                  {}});
  }

  void end(std::size_t level, const X12Segment& segment) {
    close_from(level + 1, segment.number);
    auto& open = open_[level];
    if (!open.is_open) return file_.reading.not_read(segment, said("ends what did not begin"));
    ++file_.reading.read;
    open.is_open = false;
    if (level == transaction_level) ++open.count;
    if (without_zeros(segment.at(1)) != fmt::to_string(open.count)) {
      file_.reading.note(segment,
                         say("{} counts '{}' {}, but there are {}", levels[level].end,
                             excerpt(segment.at(1)), said(levels[level].counts), open.count));
    }
    if (segment.at(2) != open.control) {
      file_.reading.note(
          segment, say("the control number '{}' is not '{}', as {} has it", excerpt(segment.at(2)),
                       excerpt(open.control), levels[level].begin));
    }
  }

  /// Everything within a level ends where the level ends, or another begins.
  void close_from(std::size_t level, int number) {
    for (std::size_t i = levels.size(); i-- > level;) {
      if (!open_[i].is_open) continue;
      open_[i].is_open = false;
      const auto& of = levels[i];
      file_.reading.differences.push_back(
          number > 0
              ? say("Segment {}: {} has no {}; the file may be cut off.", number, of.begin, of.end)
              : say("The end: {} has no {}; the file may be cut off.", of.begin, of.end));
    }
  }

  X12File& file_;
  std::array<Open, levels.size()> open_;
  std::string group_implementation_;
};

}  // namespace

void X12Reading::not_read(const X12Segment& segment, std::string reason) {
  unread.push_back({segment.number, shown_text(segment), std::move(reason)});
}

void X12Reading::note(const X12Segment& segment, const std::string& words) {
  notes.push_back(say("Segment {}: {}.", segment.number, words));
}

Expected<X12File> read_x12(const std::string& name, std::string bytes) {
  auto segments = read_x12_segments(name, std::move(bytes));
  if (!segments) return tl::unexpected(segments.error());
  X12File made;
  made.name = name;
  made.reading.segments = static_cast<int>(segments->segments.size());
  made.reading.notes = std::move(segments->notes);
  Envelopes envelopes{made};
  for (auto& segment : segments->segments) envelopes.take(std::move(segment));
  envelopes.finish();
  return made;
}

}  // namespace sparewell::exchange
