'use client'
import { useRouter } from 'next/navigation'
import { useEffect } from 'react'

const everyMs = 1500

/** Draws the page anew while a backup is being made, and says what is being done. */
export function WhileRunning({ doing }: { doing: string }) {
  const router = useRouter()
  useEffect(() => {
    const timer = setInterval(() => router.refresh(), everyMs)
    return () => clearInterval(timer)
  }, [router])
  return <p role="status">A backup is being made: {doing} …</p>
}
