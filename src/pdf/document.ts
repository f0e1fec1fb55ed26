/**
 * The PDF document itself: PDF 1.7 written to PDF/A-3b, tagged, with fixed dates. The only file that reaches into PDFKit
 * beyond its typings; what it mends is said at the place.
 */
import PDFDocument from "pdfkit";
import { registerFaces } from "./fonts.ts";

export type Doc = PDFKit.PDFDocument;
export type Element = PDFKit.PDFStructureElement;

export interface DocumentFacts {
  readonly title: string;
  readonly subject: string;
  /** Name and version of the program. */
  readonly creator: string;
  /** The shooting date as midnight UTC: never the clock, so that the same day gives the same bytes. */
  readonly date: Date;
  readonly paper: "A4" | "Letter";
}

/** A file inside the PDF. */
export interface Attachment {
  readonly name: string;
  readonly mime: string;
  readonly description: string;
  readonly bytes: Uint8Array;
}

/** A document without pages. Pages are kept until the end, so that page numbers can be written last. */
export function newDocument(facts: DocumentFacts): Doc {
  const options = {
    size: facts.paper === "A4" ? "A4" : "LETTER",
    margin: 0,
    pdfVersion: "1.7" as const,
    subset: "PDF/A-3b" as const,
    tagged: true,
    lang: "en-GB",
    displayTitle: true,
    bufferPages: true,
    autoFirstPage: false,
    // No default font: the built-in one would not be embedded.
    font: null as unknown as string,
    info: {
      Title: oneLine(facts.title),
      Subject: oneLine(facts.subject),
      Creator: facts.creator,
      Producer: facts.creator,
      CreationDate: facts.date,
      ModDate: facts.date,
    },
  };
  const doc = new PDFDocument(options);
  registerFaces(doc);
  escapeMetadata(doc);
  declareAccessible(doc);
  numberPages(doc);
  orderNames(doc);
  return doc;
}

/** Adds files with the relationship Data and the document's own date. Call before the end, in the order they are listed. */
export function attachFiles(doc: Doc, files: readonly Attachment[], date: Date): void {
  for (const file of files) {
    const options = {
      name: file.name,
      type: file.mime,
      description: file.description,
      relationship: "Data",
      creationDate: date,
      modifiedDate: date,
    };
    doc.file(file.bytes as Buffer, options);
  }
}

/**
 * Draws one line of text in the current face, size and colour with its baseline at `y`. The library's own way there looks for
 * columns, links and line ends, and measures the text twice more.
 */
export function drawFragment(doc: Doc, text: string, x: number, y: number, width: number): void {
  const host = doc as unknown as {
    _fragment(text: string, x: number, y: number, options: Readonly<Record<string, unknown>>): void;
  };
  host._fragment(text, x, y, { baseline: "alphabetic", textWidth: width, wordCount: 1, fill: true });
}

/** Ends the document and returns its bytes. */
export function documentBytes(doc: Doc): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    doc.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    doc.on("end", () => resolve(new Uint8Array(Buffer.concat(chunks))));
    doc.on("error", reject);
    doc.end();
  });
}

/** PDFKit writes the XMP packet without escaping: a title with "&" would make it ill-formed. The Info entries keep the plain text. */
function escapeMetadata(doc: Doc): void {
  const write = doc.endMetadata.bind(doc);
  doc.endMetadata = () => {
    const plain = doc.info;
    const escaped = Object.entries(plain).map(([key, value]) => [key, typeof value === "string" ? escapeXml(value) : value]);
    doc.info = Object.fromEntries(escaped);
    write();
    doc.info = plain;
  };
}

/**
 * Says in the metadata that the file is written to PDF/UA-1. PDF/A allows only properties that it knows or that the packet
 * describes, so the description stands before the claim.
 *
 * @source ISO 14289-1:2014, 5; ISO 19005-3:2012, 6.6.2.3
 */
function declareAccessible(doc: Doc): void {
  const host = doc as unknown as { readonly endSubset: () => void; readonly appendXML: (xml: string) => void };
  const end = host.endSubset.bind(doc);
  Object.assign(doc, {
    endSubset: () => {
      end();
      host.appendXML(ACCESSIBLE);
    },
  });
}

const ACCESSIBLE = `
        <rdf:Description rdf:about=""
            xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
            xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
            xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
            <pdfaExtension:schemas>
                <rdf:Bag>
                    <rdf:li rdf:parseType="Resource">
                        <pdfaSchema:schema>PDF/UA identification schema</pdfaSchema:schema>
                        <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
                        <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
                        <pdfaSchema:property>
                            <rdf:Seq>
                                <rdf:li rdf:parseType="Resource">
                                    <pdfaProperty:name>part</pdfaProperty:name>
                                    <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
                                    <pdfaProperty:category>internal</pdfaProperty:category>
                                    <pdfaProperty:description>Part of ISO 14289 that the file is written to</pdfaProperty:description>
                                </rdf:li>
                            </rdf:Seq>
                        </pdfaSchema:property>
                    </rdf:li>
                </rdf:Bag>
            </pdfaExtension:schemas>
        </rdf:Description>
        <rdf:Description rdf:about="" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
            <pdfuaid:part>1</pdfuaid:part>
        </rdf:Description>
        `;

interface NameTree {
  _compareKeys: (a: string, b: string) => number;
}

/** The library orders names by the locale; a viewer looks them up by their codes, and the bytes must not depend on where it runs. */
function orderNames(doc: Doc): void {
  const root = (
    doc as unknown as { readonly _root: { readonly data: { readonly Names: { readonly data: Record<string, unknown> } } } }
  )._root;
  const byCode = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
  const trees = root.data.Names.data;
  (trees["Dests"] as NameTree)._compareKeys = byCode;
  const host = doc as unknown as { readonly addNamedEmbeddedFile: (name: string, file: unknown) => void };
  const add = host.addNamedEmbeddedFile.bind(doc);
  Object.assign(doc, {
    addNamedEmbeddedFile: (name: string, file: unknown) => {
      add(name, file);
      (trees["EmbeddedFiles"] as NameTree)._compareKeys = byCode;
    },
  });
}

/** Page labels 1, 2, 3 as the viewer shows them. */
function numberPages(doc: Doc): void {
  const root = (doc as unknown as { readonly _root: { readonly data: Record<string, unknown> } })._root;
  root.data["PageLabels"] = { Nums: [0, { S: "D" }] };
}

function oneLine(text: string): string {
  return text.replace(/\p{Cc}+/gu, " ").replace(/\p{Surrogate}/gu, "\ufffd");
}

function escapeXml(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
}
