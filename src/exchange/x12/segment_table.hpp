/// Hands the segments of a transaction to their handlers and counts each as read or unread.
#pragma once

#include <string>
#include <unordered_map>
#include <unordered_set>

#include "clinic/say.hpp"
#include "exchange/cell.hpp"
#include "exchange/x12/transactions.hpp"

namespace sparewell::exchange {

template <class Reader>
struct SegmentTable {
  /// Each returns why the segment is unread; "" when it was read.
  using Handler = Reason (Reader::*)(const X12Segment&);

  std::unordered_map<std::string, Handler> handlers;
  std::unordered_set<std::string> passed_over;  ///< known to hold nothing that is kept
  std::string otherwise;                        ///< why any other is unread, in English

  void read(Reader& reader, const X12Transaction& transaction, X12Reading& reading) const {
    for (const auto& segment : transaction.segments) {
      auto reason = take(reader, segment);
      if (reason.empty()) {
        ++reading.read;
      } else {
        reading.not_read(segment, std::move(reason));
      }
    }
  }

 private:
  Reason take(Reader& reader, const X12Segment& segment) const {
    const auto handler = handlers.find(segment.id());
    if (handler != handlers.end()) return (reader.*handler->second)(segment);
    return passed_over.contains(segment.id()) ? Reason{} : said(otherwise.c_str());
  }
};

/// Calls `read` with each transaction of the kind; the segments of others are unread.
template <class Read>
void for_each_transaction(X12File& file, std::string_view kind, Read read) {
  for (const auto& transaction : file.transactions) {
    if (transaction.kind == kind) {
      read(transaction);
      continue;
    }
    for (const auto& segment : transaction.segments) {
      file.reading.not_read(segment, say("belongs to a transaction that is no {}", kind));
    }
  }
}

}  // namespace sparewell::exchange
